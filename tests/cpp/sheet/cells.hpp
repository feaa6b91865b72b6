// Cells by name, for formulas.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "measure/amount.hpp"
#include "measure/nearest.hpp"
#include "sheet/compile.hpp"

namespace scalepan {

/// Values in the order of their names' coming.
class Cells final : public Names {
 public:
  Cells(std::initializer_list<std::pair<std::string, std::string>> values) {
    for (const auto& [name, text] : values) {
      if (text == "yes" || text == "no") {
        add(name, Rational(text == "yes" ? 1 : 0), flag_type());
      } else {
        const Quantity quantity = parse_quantity(text);
        add(name, quantity.coherent(), quantity_type(quantity.unit()));
      }
    }
  }

  std::optional<Found> find(std::string_view name) const override {
    const auto found = places_.find(std::string(name));
    if (found == places_.end()) return std::nullopt;
    return Found{found->second, types_[found->second]};
  }
  std::vector<std::string> nearest(std::string_view name) const override {
    std::vector<std::string_view> known;
    for (const auto& [other, place] : places_) known.push_back(other);
    return nearest_names(name, known);
  }

  [[nodiscard]] Rational run(const Formula& formula) const {
    std::vector<Rational> stack;
    return scalepan::run(formula, {values_.data(), nullptr, stack});
  }

  /// The figure as it reads back: `125000/11 g AP`, `yes`.
  [[nodiscard]] std::string told(std::string_view text) const {
    const Formula formula = compile(text, *this);
    const Rational value = run(formula);
    if (formula.type.kind == ValueKind::flag) return value.is_zero() ? "no" : "yes";
    return Quantity::of_coherent(value, formula.type.shown).text();
  }

 private:
  void add(const std::string& name, const Rational& value, const ValueType& type) {
    places_.emplace(name, static_cast<std::uint32_t>(values_.size()));
    values_.push_back(value);
    types_.push_back(type);
  }

  std::map<std::string, std::uint32_t> places_;
  std::vector<Rational> values_;
  std::vector<ValueType> types_;
};

}  // namespace scalepan
