// Cells by name, for formulas.
#pragma once

#include <algorithm>
#include <functional>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "exact/error.hpp"
#include "measure/amount.hpp"
#include "measure/nearest.hpp"
#include "measure/quantity.hpp"
#include "sheet/compile.hpp"

namespace scalepan {

/// Values in the order of their names' coming.
class Cells final : public Names {
 public:
  /// `{"need", "5 kg EP"}`, `{"large", "yes"}`, `{"kind", "\"leek\""}`, and as intervals
  /// `{"spread", "3 kg to 5 kg"}` and `{"some", "at least 3 kg"}`.
  Cells(std::initializer_list<std::pair<std::string, std::string>> values,
        std::vector<Function> more = {})
      : compiler_(std::make_shared<const FunctionTable>(std::move(more))) {
    for (const auto& [name, text] : values) add(name, text);
  }

  void add(const std::string& name, const std::string& text) {
    const std::size_t to = text.find(" to ");
    if (text == "yes" || text == "no") {
      add(name, Rational(text == "yes" ? 1 : 0), flag_type());
    } else if (text.starts_with('"')) {
      add(name, std::make_shared<Text>(text.substr(1, text.size() - 2)), text_type());
    } else if (text.starts_with("at least ")) {
      const Quantity low = parse_quantity(text.substr(9));
      add(name, Interval{low.coherent(), std::nullopt}, quantity_type(low.unit()));
    } else if (to != std::string::npos) {
      const Quantity low = parse_quantity(text.substr(0, to));
      const Quantity high = parse_quantity(text.substr(to + 4));
      add(name, Interval{low.coherent(), high.coherent()}, quantity_type(high.unit()));
    } else {
      const Quantity quantity = parse_quantity(text);
      add(name, quantity.coherent(), quantity_type(quantity.unit()));
    }
  }
  void add(const std::string& name, Value value, const ValueType& type) {
    places_.emplace(name, static_cast<std::uint32_t>(values_.size()));
    names_.push_back(name);
    values_.push_back(std::move(value));
    types_.push_back(type);
  }
  /// The total of the column of that name, which is no cell of that name.
  void add_total(const std::string& column, const std::string& text) {
    const Quantity quantity = parse_quantity(text);
    totals_.emplace(column, static_cast<std::uint32_t>(values_.size()));
    names_.push_back(column);
    values_.emplace_back(quantity.coherent());
    types_.push_back(quantity_type(quantity.unit()));
  }

  std::optional<Found> find(std::string_view name) const override { return in(places_, name); }
  std::optional<Found> find_total(std::string_view column) const override {
    return in(totals_, column);
  }
  std::vector<std::string> nearest(std::string_view name) const override {
    std::vector<std::string_view> known;
    for (const auto& [other, place] : places_) known.push_back(other);
    for (const auto& [other, place] : totals_) known.push_back(other);
    return nearest_names(name, known);
  }

  [[nodiscard]] Formula compile(std::string_view text) const {
    return compiler_.compile(text, *this);
  }

  [[nodiscard]] bool all_numbers(const Formula& formula) const {
    return std::ranges::all_of(formula.inputs, [&](std::uint32_t cell) {
      return std::holds_alternative<Rational>(values_[cell]);
    });
  }
  [[nodiscard]] Rational run_numbers(const Formula& formula) const {
    std::vector<Rational> numbers(values_.size());
    for (std::size_t i = 0; i < numbers.size(); ++i) {
      if (const auto* number = std::get_if<Rational>(&values_[i])) numbers[i] = *number;
    }
    RunSpace space;
    return scalepan::run(*formula.programme, {formula.inputs.data(), numbers.data()}, space);
  }
  [[nodiscard]] Value run_values(const Formula& formula) const {
    RunSpace space;
    return run_on_values(
        *formula.programme, [&](std::size_t input) { return values_[formula.inputs[input]]; },
        space);
  }
  /// For `text_of` and `text_offset`.
  [[nodiscard]] std::function<std::string(std::size_t)> naming(const Formula& formula) const {
    return [this, &formula](std::size_t input) { return names_[formula.inputs[input]]; };
  }

  /// By the machine for numbers where it can. Errors stand in the text.
  [[nodiscard]] Value value(const Formula& formula) const {
    try {
      if (formula.programme->numeric && all_numbers(formula)) return run_numbers(formula);
      return run_values(formula);
    } catch (const Error& error) {
      Place place = error.place();
      place.offset = text_offset(*formula.programme, naming(formula), place.offset);
      throw error.at(place);
    }
  }
  /// The figure as it reads back: `125000/11 g AP`, `yes`, `3 to 5 kg`.
  [[nodiscard]] std::string told(std::string_view text) const {
    const Formula formula = compile(text);
    return figure_text(value(formula), formula.programme->type);
  }

 private:
  using Places = std::map<std::string, std::uint32_t, std::less<>>;

  std::optional<Found> in(const Places& places, std::string_view name) const {
    const auto found = places.find(name);
    if (found == places.end()) return std::nullopt;
    return Found{found->second, types_[found->second]};
  }

  Places places_;
  Places totals_;
  std::vector<std::string> names_;
  std::vector<Value> values_;
  std::vector<ValueType> types_;
  mutable Compiler compiler_;
};

}  // namespace scalepan
