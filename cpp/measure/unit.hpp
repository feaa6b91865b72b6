// Units: exact ratios to the coherent unit of their dimension, alone or in products.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "exact/rational.hpp"
#include "measure/dimension.hpp"
#include "measure/measures.hpp"

namespace scalepan {

/// One unit of the table (measure/unit_table.hpp), a currency, or a stage.
struct NamedUnit {
  std::string symbol;  // unambiguous, reads back: `cup_us`
  std::string label;   // as a cook writes it: `cup`
  std::string plural;  // `cups`
  std::string ucum;    // without brackets around annotations; empty where UCUM has none
  Dimension dimension;
  Rational ratio;  // in the coherent unit of the dimension
  Measures measures = Measures::unstated;
};

/// An interned product of named units. Copies are cheap; any number of threads may use it.
class Unit {
 public:
  using Part = std::pair<const NamedUnit*, int>;

  /// The unit of a plain number.
  Unit();
  /// Any order; powers of one named unit are added up.
  explicit Unit(std::vector<Part> parts);
  /// The unit of a symbol of the table, a currency code or a stage. Throws `unit.unknown`.
  static Unit named(std::string_view symbol);
  /// The coherent unit of a dimension: `g AP`, `mL`, `GBP/(g AP)`.
  static Unit coherent(Dimension dimension);

  /// Reads back to the same unit.
  [[nodiscard]] const std::string& symbol() const { return data_->symbol; }
  /// For people, without stages: `kg`, `cup`, `cups`.
  [[nodiscard]] const std::string& label() const { return data_->label; }
  [[nodiscard]] const std::string& plural() const { return data_->plural; }
  [[nodiscard]] Dimension dimension() const { return data_->dimension; }
  [[nodiscard]] const Rational& ratio() const { return data_->ratio; }
  [[nodiscard]] const std::vector<Part>& parts() const { return data_->parts; }
  /// The same unit of an amount at a stage; the unit itself for `Stage::none`.
  [[nodiscard]] Unit at(Stage stage) const;
  [[nodiscard]] Unit without_stages() const;

  friend bool operator==(Unit a, Unit b) { return a.data_ == b.data_; }

 private:
  struct Data {
    std::string symbol;
    std::string label;
    std::string plural;
    Dimension dimension;
    Rational ratio;
    std::vector<Part> parts;
  };
  class Pool;
  explicit Unit(const Data* data) : data_(data) {}

  const Data* data_;
};

}  // namespace scalepan
