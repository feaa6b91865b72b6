// Objects of Python that are kept in pickles and compared by value: one call a class.
#pragma once

#include <memory>
#include <typeinfo>
#include <utility>

#include "bindings/archive.hpp"
#include "bindings/pybind.hpp"

namespace scalepan::bindings {

/// How a class goes through an archive.
struct Kept {
  const std::type_info* type;
  /// Passes the object, or makes one.
  void (*pass)(Archive& archive, void*& object);
};

/// Gives the class `__reduce__`, `__eq__`, `__hash__`, `__copy__` and `__deepcopy__`. What can be
/// changed has no hash, and is copied as it is pickled.
void keep_class(const py::object& type, const Kept& kept, bool can_change);

template <typename T>
void pass_whole(Archive& archive, void*& object) {
  if (!archive.reads()) return pass(archive, *static_cast<T*>(object));
  auto made = std::make_unique<T>();
  pass(archive, *made);
  object = made.release();
}

/// By way of a state: `StateOf` gives it, `Make` makes a `std::unique_ptr` of an object of it.
template <auto StateOf, auto Make, typename T>
void pass_state(Archive& archive, void*& object) {
  using State = decltype(StateOf(std::declval<const T&>()));
  State state = archive.reads() ? State{} : StateOf(*static_cast<const T*>(object));
  pass(archive, state);
  if (archive.reads()) object = std::unique_ptr<T>(Make(std::move(state))).release();
}

template <typename T>
void keep(const py::module_& m, const char* name, bool can_change = false) {
  keep_class(m.attr(name), {&typeid(T), &pass_whole<T>}, can_change);
}

template <typename T, auto StateOf, auto Make>
void keep_by(const py::module_& m, const char* name, bool can_change = false) {
  keep_class(m.attr(name), {&typeid(T), &pass_state<StateOf, Make, T>}, can_change);
}

}  // namespace scalepan::bindings
