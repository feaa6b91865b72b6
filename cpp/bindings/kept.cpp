#include "bindings/kept.hpp"

#include <string>
#include <unordered_map>
#include <vector>

#include "bindings/archive_shared.hpp"
#include "bindings/bind.hpp"

namespace scalepan::bindings {

namespace {

/// What alone can read a pickle: the version, and the layout of its bytes.
constexpr std::string_view edition = SCALEPAN_VERSION "/1";

template <typename T>
py::object shown(const std::shared_ptr<const void>& object) {
  return py::cast(std::const_pointer_cast<T>(std::static_pointer_cast<const T>(object)));
}

/// Objects of Python beside the bytes, which pickle shares.
class BesideInPython final : public Beside {
 public:
  BesideInPython() = default;
  explicit BesideInPython(const py::tuple& objects)
      : objects_(py::reinterpret_steal<py::list>(PySequence_List(objects.ptr()))) {}

  void give(Shared kind, const std::shared_ptr<const void>& object) override {
    switch (kind) {
      case Shared::recipe:
        return objects_.append(shown<Recipe>(object));
      case Shared::prices:
        return objects_.append(shown<PriceBook>(object));
      case Shared::stock:
        return objects_.append(shown<Stock>(object));
      case Shared::basket:
        return objects_.append(shown<Basket>(object));
    }
  }

  std::shared_ptr<const void> take(Shared kind) override {
    if (taken_ >= objects_.size()) fail_damaged();
    const py::object object = objects_[taken_++];
    try {
      switch (kind) {
        case Shared::recipe:
          return object.cast<std::shared_ptr<Recipe>>();
        case Shared::prices:
          return object.cast<std::shared_ptr<PriceBook>>();
        case Shared::stock:
          return object.cast<std::shared_ptr<Stock>>();
        case Shared::basket:
          return object.cast<std::shared_ptr<Basket>>();
      }
    } catch (const py::cast_error&) {
      fail_damaged();
    }
    return nullptr;
  }

  std::shared_ptr<const Catalog> base(const std::string& name) override {
    if (name.empty()) return std::make_shared<const Catalog>();
    return py::module_::import("scalepan.foods")
        .attr("base_catalog")(name)
        .cast<std::shared_ptr<Catalog>>();
  }

  [[nodiscard]] const py::list& objects() const { return objects_; }

 private:
  py::list objects_;
  std::size_t taken_ = 0;
};

/// All classes, by the type of Python and by their names.
struct Classes {
  std::unordered_map<const PyTypeObject*, Kept> by_type;
  std::unordered_map<std::string, Kept> by_name;
};

Classes& classes() {
  static Classes kept;
  return kept;
}

/// Of the object's class, or of the nearest one above it; null where there is none.
const Kept* kept_of(const py::handle& object) {
  for (const PyTypeObject* type = Py_TYPE(object.ptr()); type != nullptr; type = type->tp_base) {
    const auto found = classes().by_type.find(type);
    if (found != classes().by_type.end()) return &found->second;
  }
  return nullptr;
}

/// What an object consists of.
struct State {
  std::string bytes;
  py::list beside;
};

State state_of(const py::handle& object, const Kept& kept, Purpose purpose) {
  py::detail::type_caster_generic caster(*kept.type);
  if (!caster.load(object, false)) throw py::type_error("an object that was not made");
  BesideInPython beside;
  Archive archive(purpose, beside);
  kept.pass(archive, caster.value);
  return {std::move(archive.written()), beside.objects()};
}

py::object restored(const std::string& name, const py::bytes& bytes, const py::tuple& objects) {
  const auto found = classes().by_name.find(name);
  if (found == classes().by_name.end()) fail_damaged();
  const Kept& kept = found->second;
  BesideInPython beside(objects);
  Archive archive(opened(edition, std::string_view(bytes)), beside);
  void* made = nullptr;
  kept.pass(archive, made);
  py::object object = py::reinterpret_steal<py::object>(py::detail::type_caster_generic::cast(
      made, py::return_value_policy::take_ownership, py::handle(),
      py::detail::get_type_info(*kept.type), nullptr, nullptr));
  archive.expect_end();
  return object;
}

/// How pickle makes the object anew.
py::tuple reduced(const py::object& object) {
  const Kept* kept = kept_of(object);
  const State state = state_of(object, *kept, Purpose::keeping);
  const py::object restore = py::module_::import("scalepan.pickles").attr("restored");
  const std::string bytes = sealed(edition, state.bytes);
  py::list arguments;
  arguments.append(py::type::handle_of(object).attr("__name__"));
  arguments.append(py::bytes(bytes));
  for (const py::handle one : state.beside) arguments.append(one);
  return py::make_tuple(restore, py::tuple(arguments));
}

py::object equal(const py::object& object, const py::object& other) {
  const Kept* kept = kept_of(object);
  if (kept_of(other) != kept) return py::reinterpret_borrow<py::object>(Py_NotImplemented);
  if (object.is(other)) return py::bool_(true);
  const State one = state_of(object, *kept, Purpose::comparing);
  const State two = state_of(other, *kept, Purpose::comparing);
  return py::bool_(one.bytes == two.bytes && one.beside.equal(two.beside));
}

std::size_t hash_of(const py::object& object) {
  const State state = state_of(object, *kept_of(object), Purpose::comparing);
  return std::hash<std::string>()(state.bytes);
}

}  // namespace

void keep_class(const py::object& type, const Kept& kept, bool can_change) {
  classes().by_type.emplace(reinterpret_cast<const PyTypeObject*>(type.ptr()), kept);
  classes().by_name.emplace(type.attr("__name__").cast<std::string>(), kept);
  const auto method = [&](const char* name, auto function, auto... arguments) {
    type.attr(name) = py::cpp_function(function, py::name(name), py::is_method(type), arguments...);
  };
  method("__reduce__", &reduced);
  method("__eq__", &equal);
  if (can_change) {
    type.attr("__hash__") = py::none();
  } else {
    method("__hash__", &hash_of);
    method("__copy__", [](const py::object& self) { return self; });
    method("__deepcopy__", [](const py::object& self, const py::object& /*memo*/) { return self; });
  }
}

void bind_kept(py::module_& m) {
  m.def("restored", &restored, py::arg("name"), py::arg("state"), py::arg("beside"));
}

}  // namespace scalepan::bindings
