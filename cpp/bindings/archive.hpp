// Objects as bytes: one function a type, `pass`, says what it consists of, for both directions.
//
//   bytes   = edition checksum body      (`sealed`)
//   whole   = 7 bits a byte, the sign lowest, the last byte below 128
//   number  = denominator numerator      of a word; else 0, whether it is below zero, and the lists
//                                        of their 62-bit parts, the lowest first
//   text    = length bytes               or -1 - i for the i-th text before it
//   list    = length elements
//
// A reader takes memory in proportion to the bytes at most, and what stands in one another is at
// most `deepest` deep.
#pragma once

#include <boost/pfr/core.hpp>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include "exact/error.hpp"
#include "exact/rational.hpp"
#include "measure/quantity.hpp"

namespace scalepan {

class Catalog;

}  // namespace scalepan

namespace scalepan::bindings {

/// What bytes only refer to, since other objects share it.
enum class Shared : std::uint8_t { recipe, prices, stock, basket };

/// What stands beside the bytes.
class Beside {
 public:
  virtual ~Beside() = default;
  virtual void give(Shared kind, const std::shared_ptr<const void>& object) = 0;
  /// In the order given.
  [[nodiscard]] virtual std::shared_ptr<const void> take(Shared kind) = 0;
  /// The catalogue of that name; an empty one for an empty name.
  [[nodiscard]] virtual std::shared_ptr<const Catalog> base(const std::string& name) = 0;
};

/// What the bytes are for.
enum class Purpose : std::uint8_t {
  keeping,
  comparing,  // equal values give equal bytes: no unit to show, no place in a file
  reading,
};

class Archive {
 public:
  static constexpr int deepest = 200;

  Archive(Purpose purpose, Beside& beside) : beside_(&beside), purpose_(purpose) {}
  /// Reads what `keeping` wrote.
  Archive(std::string_view bytes, Beside& beside)
      : left_(bytes), beside_(&beside), purpose_(Purpose::reading) {}

  [[nodiscard]] bool reads() const { return purpose_ == Purpose::reading; }
  [[nodiscard]] bool compares() const { return purpose_ == Purpose::comparing; }
  [[nodiscard]] Beside& beside() { return *beside_; }
  [[nodiscard]] std::string& written() { return written_; }

  /// Each writes the value, or puts in its place what it reads. All throw `pickle.damaged`.
  void whole(std::int64_t& value);
  void text(std::string& value);
  /// A number of elements, never more than the bytes that are left can tell.
  [[nodiscard]] std::size_t length(std::size_t value, std::size_t least_bytes);
  /// So many bytes as they are.
  void bytes(void* data, std::size_t size);
  void unit(Unit& value);
  void expect_end() const;

  /// What stands inside something.
  class Level {
   public:
    explicit Level(Archive& archive);
    ~Level() { --depth_; }
    Level(const Level&) = delete;
    Level& operator=(const Level&) = delete;

   private:
    int& depth_;
  };

 private:
  std::string written_;
  std::string_view left_;
  std::map<std::string, std::int64_t, std::less<>> places_;  // of texts written
  std::vector<std::string_view> texts_;                      // read
  std::map<std::string, Unit, std::less<>> units_;           // read
  Beside* beside_;
  Purpose purpose_;
  int depth_ = 0;
};

[[noreturn]] void fail_damaged();
/// Sixteen digits that other bytes hardly have.
[[nodiscard]] std::string digits_of(std::string_view bytes);

/// The body with a checksum, and the edition that alone can read it.
[[nodiscard]] std::string sealed(std::string_view edition, std::string_view body);
/// The body. Throws `pickle.version` for another edition, and `pickle.damaged`.
[[nodiscard]] std::string_view opened(std::string_view edition, std::string_view bytes);

void pass(Archive& archive, bool& value);
void pass(Archive& archive, std::string& value);
void pass(Archive& archive, Rational& value);
void pass(Archive& archive, Unit& value);
void pass(Archive& archive, Quantity& value);
/// Nothing, where values are compared.
void pass(Archive& archive, Place& value);

template <typename T>
  requires std::integral<T> || std::is_enum_v<T>
void pass(Archive& archive, T& value) {
  auto whole = static_cast<std::int64_t>(value);
  archive.whole(whole);
  value = static_cast<T>(whole);
  if (static_cast<std::int64_t>(value) != whole) fail_damaged();
}

template <typename T>
void pass(Archive& archive, std::vector<T>& values);
template <typename T>
void pass(Archive& archive, std::optional<T>& value);
template <typename A, typename B>
void pass(Archive& archive, std::pair<A, B>& value);
template <typename K, typename V, typename Order>
void pass(Archive& archive, std::map<K, V, Order>& values);
template <typename... T>
void pass(Archive& archive, std::variant<T...>& value);

/// All members, one after the other.
template <typename T>
  requires std::is_aggregate_v<T>
void pass(Archive& archive, T& value) {
  boost::pfr::for_each_field(value, [&archive](auto& member) { pass(archive, member); });
}

/// That a value takes, at least.
template <typename T>
constexpr std::size_t least_bytes() {
  if constexpr (std::is_aggregate_v<T>) {
    return boost::pfr::tuple_size_v<T>;
  } else {
    return 1;
  }
}

template <typename T>
void pass(Archive& archive, std::vector<T>& values) {
  const Archive::Level level(archive);
  const std::size_t length = archive.length(values.size(), least_bytes<T>());
  if (archive.reads()) values = std::vector<T>(length);
  for (T& value : values) pass(archive, value);
}

template <typename T>
void pass(Archive& archive, std::optional<T>& value) {
  bool there = value.has_value();
  pass(archive, there);
  if (!there) return;
  if (archive.reads()) value.emplace();
  pass(archive, *value);
}

template <typename A, typename B>
void pass(Archive& archive, std::pair<A, B>& value) {
  pass(archive, value.first);
  pass(archive, value.second);
}

template <typename K, typename V, typename Order>
void pass(Archive& archive, std::map<K, V, Order>& values) {
  std::vector<std::pair<K, V>> listed(values.begin(), values.end());
  pass(archive, listed);
  if (archive.reads()) values.insert(listed.begin(), listed.end());
}

/// Makes the alternative of that place.
template <typename Variant, std::size_t Place = 0>
void emplace_at(Variant& value, std::size_t place) {
  if constexpr (Place < std::variant_size_v<Variant>) {
    if (place == Place) {
      value.template emplace<Place>();
    } else {
      emplace_at<Variant, Place + 1>(value, place);
    }
  } else {
    fail_damaged();
  }
}

template <typename... T>
void pass(Archive& archive, std::variant<T...>& value) {
  std::size_t place = value.index();
  pass(archive, place);
  if (archive.reads()) emplace_at(value, place);
  std::visit([&archive](auto& one) { pass(archive, one); }, value);
}

}  // namespace scalepan::bindings
