// Dimensions: products of base symbols with integer powers, interned.
//
// The bases are a closed set. The stages of a food amount are among them, so a peeled weight and
// a whole weight are of different dimensions, and an edible share has the dimension EP/AP.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace scalepan {

/// Stages of a food amount.
enum class Stage : std::uint8_t { none, as_purchased, edible, cooked, drained, served };

/// `AP`, `EP`, `cooked`, `drained`, `served`; empty for none.
[[nodiscard]] std::string_view symbol_of(Stage stage);
/// `as purchased`, `edible portion`, ...
[[nodiscard]] std::string_view name_of(Stage stage);
/// The stage written `AP`, `EP`, ...; nothing for another word.
[[nodiscard]] std::optional<Stage> stage_named(std::string_view symbol);

/// A base symbol: the fixed ones, then the stages, then one for each ISO 4217 currency.
class Base {
 public:
  constexpr explicit Base(std::uint16_t index) : index_(index) {}
  static Base of(Stage stage);
  /// `index` of the currency table.
  static Base of_currency(std::size_t index);

  [[nodiscard]] constexpr std::uint16_t index() const { return index_; }
  /// The currency's place in the currency table, or nothing.
  [[nodiscard]] std::optional<std::size_t> currency() const;
  [[nodiscard]] Stage stage() const;
  /// The coherent unit's symbol: `g`, `cm`, `s`, `portion`, `AP`, `GBP`.
  [[nodiscard]] std::string_view symbol() const;

  friend constexpr auto operator<=>(Base, Base) = default;

 private:
  std::uint16_t index_;
};

namespace base {
inline constexpr Base mass{0};
inline constexpr Base length{1};
inline constexpr Base time{2};
inline constexpr Base portion{3};
inline constexpr Base load{4};
inline constexpr Base piece{5};
inline constexpr std::uint16_t first_stage = 6;
inline constexpr std::uint16_t first_currency = 11;
}  // namespace base

/// A base and its power, never zero.
using Factor = std::pair<Base, int>;

/// An interned product of factors: comparing is comparing addresses, multiplying is a look-up.
/// Any number of threads may use it.
class Dimension {
 public:
  /// Dimensionless.
  Dimension();
  explicit Dimension(Base base) : Dimension(std::vector<Factor>{{base, 1}}) {}
  /// Any order, powers of one base are added up. Throws `unit.power` beyond `most_power`.
  explicit Dimension(std::vector<Factor> factors);

  static constexpr int most_power = 9;

  /// Ordered by base.
  [[nodiscard]] const std::vector<Factor>& factors() const { return data_->factors; }
  [[nodiscard]] bool is_number() const { return data_->factors.empty(); }
  [[nodiscard]] int power_of(Base base) const;
  /// The one stage it carries to the first power, if it carries no other.
  [[nodiscard]] Stage stage() const;
  [[nodiscard]] bool has_stages() const;
  [[nodiscard]] Dimension without_stages() const;
  /// The one currency it is an amount of, or nothing.
  [[nodiscard]] std::optional<std::size_t> currency() const;
  /// For people: `weight EP`, `volume`, `money in GBP`, `GBP/(g AP)`.
  [[nodiscard]] const std::string& name() const { return data_->name; }
  /// The coherent unit: `g EP`, `mL`, `GBP/(g AP)`; empty for a number.
  [[nodiscard]] const std::string& coherent_symbol() const { return data_->symbol; }

  friend Dimension operator*(Dimension a, Dimension b);
  friend Dimension operator/(Dimension a, Dimension b);
  [[nodiscard]] Dimension power(int exponent) const;
  friend bool operator==(Dimension a, Dimension b) { return a.data_ == b.data_; }

 private:
  struct Data {
    std::uint32_t id = 0;
    std::vector<Factor> factors;
    std::string name;
    std::string symbol;
  };
  class Pool;
  explicit Dimension(const Data* data) : data_(data) {}

  const Data* data_;
};

namespace dimension {
[[nodiscard]] Dimension mass();
[[nodiscard]] Dimension length();
[[nodiscard]] Dimension volume();
[[nodiscard]] Dimension time();
[[nodiscard]] Dimension piece();
[[nodiscard]] Dimension portion();
}  // namespace dimension

}  // namespace scalepan
