#include "measure/unit_table.hpp"

#include <algorithm>
#include <array>
#include <deque>
#include <string>
#include <unordered_map>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"
#include "measure/currency.hpp"
#include "measure/nearest.hpp"

namespace scalepan {

namespace {

enum class Kind : std::uint8_t { mass, volume, length, time, piece, portion, load, number };

using M = Measures;

struct Row {
  std::string_view symbol;
  std::string_view names;
  std::string_view plural;
  std::string_view ucum;
  Kind kind;
  std::int64_t numerator;
  std::int64_t denominator;
  Measures measures;
};

constexpr std::array rows = std::to_array<Row>({
#include "measure/unit_rows.inc"
});

struct Doubtful {
  std::string_view name;
  std::string_view meanings;
};

// Letters that cooks use for two units each.
constexpr std::array<Doubtful, 6> doubtful_names{{
    {"T", "tbsp or tsp"},
    {"t", "tsp or tbsp"},
    {"Tb", "tbsp or tsp"},
    {"c", "cup or cL"},
    {"C", "cup or degrees Celsius"},
    {"G", "g or gal"},
}};

Dimension dimension_of(Kind kind) {
  switch (kind) {
    case Kind::mass:
      return dimension::mass();
    case Kind::volume:
      return dimension::volume();
    case Kind::length:
      return dimension::length();
    case Kind::time:
      return dimension::time();
    case Kind::piece:
      return dimension::piece();
    case Kind::portion:
      return dimension::portion();
    case Kind::load:
      return Dimension(base::load);
    case Kind::number:
      break;
  }
  return {};
}

std::vector<std::string_view> split_names(std::string_view names) {
  std::vector<std::string_view> parts;
  while (!names.empty()) {
    const std::size_t bar = names.find('|');
    parts.push_back(names.substr(0, bar));
    names = bar == std::string_view::npos ? std::string_view() : names.substr(bar + 1);
  }
  return parts;
}

/// `[cup_us]` as it is, `mL` in brackets too, so that every UCUM code has one written form.
std::string bracketed(std::string_view ucum) {
  return ucum.starts_with('[') ? std::string(ucum) : "[" + std::string(ucum) + "]";
}

class Table {
 public:
  static const Table& shared() {
    static const Table table;
    return table;
  }

  [[nodiscard]] const std::vector<const NamedUnit*>* kitchen(const std::string& name) const {
    const auto found = kitchen_.find(name);
    return found == kitchen_.end() ? nullptr : &found->second;
  }
  [[nodiscard]] const NamedUnit* other(const std::string& name) const {
    const auto found = others_.find(name);
    return found == others_.end() ? nullptr : found->second;
  }
  [[nodiscard]] const std::vector<const NamedUnit*>& units() const { return units_; }
  [[nodiscard]] const std::vector<std::string_view>& names() const { return names_; }

 private:
  Table() {
    for (const Row& row : rows) add(row);
    for (std::size_t i = 0; i < currency_count(); ++i) {
      const std::string code(currency_at(i).code);
      add_other({code, code, code, "", Dimension(Base::of_currency(i)), 1});
    }
    for (const Stage stage :
         {Stage::as_purchased, Stage::edible, Stage::cooked, Stage::drained, Stage::served}) {
      const std::string symbol(symbol_of(stage));
      add_other({symbol, symbol, symbol, "", Dimension(Base::of(stage)), 1});
    }
  }

  void add(const Row& row) {
    const std::vector<std::string_view> written = split_names(row.names);
    const std::string symbol(row.symbol);
    const std::string label(written.empty() ? row.symbol.substr(0, row.symbol.rfind('_'))
                                            : written.front());
    const NamedUnit& unit = units_store_.emplace_back(
        NamedUnit{symbol, label, std::string(row.plural), std::string(row.ucum),
                  dimension_of(row.kind), Rational(row.numerator, row.denominator), row.measures});
    units_.push_back(&unit);
    others_[symbol] = &unit;
    if (!row.ucum.empty()) others_[bracketed(row.ucum)] = &unit;
    for (const std::string_view name : written) {
      auto& holders = kitchen_[std::string(name)];
      if (holders.empty()) names_.push_back(name);
      holders.push_back(&unit);
    }
  }

  void add_other(NamedUnit unit) {
    const NamedUnit& stored = units_store_.emplace_back(std::move(unit));
    others_[stored.symbol] = &stored;
  }

  std::deque<NamedUnit> units_store_;
  std::vector<const NamedUnit*> units_;
  std::vector<std::string_view> names_;
  std::unordered_map<std::string, std::vector<const NamedUnit*>> kitchen_;
  std::unordered_map<std::string, const NamedUnit*> others_;
};

[[noreturn]] void fail_which_measures(Measures measures,
                                      const std::vector<const NamedUnit*>& choices) {
  const std::string& name = choices.front()->label;
  std::string list;
  for (const NamedUnit* unit : choices) {
    list += (list.empty() ? "" : ", ") + std::string(name_of(unit->measures)) + " " +
            fixed_text(unit->ratio, 1) + " mL";
  }
  if (measures == Measures::unstated) {
    fail("unit.which_measures", "which " + name + " is meant is not stated",
         "measures = one of: " + list);
  }
  fail("unit.which_measures", std::string(name_of(measures)) + " measures have no " + name,
       "there are: " + list);
}

const NamedUnit* choose(Measures measures, const std::vector<const NamedUnit*>& choices) {
  for (const NamedUnit* unit : choices) {
    if (unit->measures == Measures::unstated || unit->measures == measures) return unit;
  }
  fail_which_measures(measures, choices);
}

Dimension kind_of(std::string_view name) {
  return Table::shared().kitchen(std::string(name))->front()->dimension;
}

/// Weights and volumes: nobody means a metre or an hour of leeks.
bool measures_food(std::string_view name) {
  const Dimension kind = kind_of(name);
  return kind == dimension::mass() || kind == dimension::volume();
}

void expect_not_doubtful(std::string_view name) {
  for (const Doubtful& doubtful : doubtful_names) {
    if (doubtful.name == name) {
      fail("unit.doubtful",
           "\"" + std::string(name) + "\" can mean " + std::string(doubtful.meanings),
           "write the unit out");
    }
  }
}

}  // namespace

std::string_view name_of(Measures measures) {
  for (const auto& [known, name] : all_measures) {
    if (known == measures) return name;
  }
  return {};
}

Measures measures_named(std::string_view name) {
  if (name.empty()) return Measures::unstated;
  std::string all;
  for (const auto& [known, text] : all_measures) {
    if (text == lower(name)) return known;
    all += (all.empty() ? "" : ", ") + std::string(text);
  }
  fail("unit.measures", "no measures are called \"" + excerpt(name) + "\"", "there are: " + all);
}

const NamedUnit* find_unit(std::string_view name, Measures measures, UnitScope scope) {
  const Table& table = Table::shared();
  const std::string exact(name);
  if (const auto* choices = table.kitchen(exact)) return choose(measures, *choices);
  if (const NamedUnit* other = table.other(exact)) {
    const bool money_or_stage = other->dimension.currency() || other->dimension.has_stages();
    if (scope == UnitScope::all || !money_or_stage) return other;
  }
  expect_not_doubtful(name);
  if (name.size() < 2) return nullptr;
  const auto* choices = table.kitchen(lower(name));
  return choices == nullptr ? nullptr : choose(measures, *choices);
}

std::span<const NamedUnit* const> units_called(std::string_view name) {
  const Table& table = Table::shared();
  const auto* choices = table.kitchen(std::string(name));
  if (choices == nullptr && name.size() > 1) choices = table.kitchen(lower(name));
  if (choices == nullptr) return {};
  return *choices;
}

std::span<const std::string_view> unit_names() { return Table::shared().names(); }

void fail_unknown_unit(std::string_view name, std::size_t offset) {
  fail_at(offset, "unit.unknown", "unknown unit \"" + excerpt(name) + "\"",
          nearest_hint(nearest_units(name)));
}

std::vector<std::string> nearest_units(std::string_view name, bool times) {
  constexpr std::size_t plenty = 20;
  constexpr std::size_t most = 3;
  std::vector<std::string> labels;
  for (const std::string& near : nearest_names(lower(name), Table::shared().names(), plenty)) {
    if (!(times ? kind_of(near) == dimension::time() : measures_food(near))) continue;
    const std::string& label = Table::shared().kitchen(near)->front()->label;
    if (std::ranges::find(labels, label) == labels.end()) labels.push_back(label);
    if (labels.size() == most) break;
  }
  return labels;
}

bool misspells_unit(std::string_view word, std::size_t shortest) {
  const std::string written = lower(word);
  return std::ranges::any_of(Table::shared().names(), [&](std::string_view name) {
    return name.size() >= shortest && written.size() <= name.size() + 1 && measures_food(name) &&
           edit_distance(written, name) <= 1;
  });
}

std::vector<const NamedUnit*> all_units() { return Table::shared().units(); }

const NamedUnit& unit_with_symbol(std::string_view symbol) {
  const NamedUnit* unit = Table::shared().other(std::string(symbol));
  if (unit == nullptr) fail_unknown_unit(symbol, Place::no_offset);
  return *unit;
}

}  // namespace scalepan
