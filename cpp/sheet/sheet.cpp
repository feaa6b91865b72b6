#include "sheet/sheet.hpp"

#include <algorithm>
#include <utility>

#include "exact/text.hpp"
#include "measure/nearest.hpp"
#include "measure/told.hpp"

namespace scalepan {

/// Formulas see the cells of their sheet.
class Sheet::NamesOfSheet final : public Names {
 public:
  explicit NamesOfSheet(const Sheet& sheet) : sheet_(sheet) {}

  [[nodiscard]] std::optional<Found> find(std::string_view name) const override {
    const Cell cell = sheet_.names_.find(name);
    if (cell == no_cell) return std::nullopt;
    return Found{cell, sheet_.contents_[cell].type};
  }
  [[nodiscard]] std::vector<std::string> nearest(std::string_view name) const override {
    return sheet_.names_.nearest(name);
  }

 private:
  const Sheet& sheet_;
};

namespace {

ValueType type_of(const CellValue& value) {
  const auto* quantity = std::get_if<Quantity>(&value);
  return quantity == nullptr ? flag_type() : quantity_type(quantity->unit());
}

Rational number_of(const CellValue& value) {
  const auto* quantity = std::get_if<Quantity>(&value);
  return quantity == nullptr ? Rational(std::get<bool>(value) ? 1 : 0) : quantity->coherent();
}

/// A bare number is of the unit the cell is shown in.
CellValue fitted(const CellValue& value, const ValueType& type) {
  const auto* quantity = std::get_if<Quantity>(&value);
  const bool bare = quantity != nullptr && quantity->unit() == Unit();
  if (!bare || type.kind != ValueKind::quantity || type.dimension().is_number()) return value;
  return Quantity(quantity->coherent(), type.shown);
}

bool alike(const ValueType& a, const ValueType& b) {
  return a.kind == b.kind && (a.kind == ValueKind::flag || a.dimension() == b.dimension());
}

Place place_of(const std::string& name, const Error& error) {
  Place place;
  place.cell = name;
  place.offset = error.place().offset;
  if (place.offset != Place::no_offset) place.column = static_cast<int>(place.offset) + 1;
  return place;
}

}  // namespace

Sheet::Sheet() = default;

Cell Sheet::known(std::string_view name) const {
  const Cell cell = names_.find(name);
  if (cell != no_cell) return cell;
  fail("sheet.unknown", "no cell is called \"" + excerpt(name) + "\"",
       nearest_hint(names_.nearest(name)));
}

Cell Sheet::known_or_new(std::string_view name) {
  const Cell known = names_.find(name);
  if (known != no_cell) return known;
  expect_cell_name(name);
  const Cell cell = names_.add(name);
  const std::size_t cells = names_.size();
  uses_.resize(cells);
  due_.resize(cells);
  contents_.resize(cells);
  values_.resize(cells);
  failed_.resize(cells);
  return cell;
}

void Sheet::expect_same_type(Cell cell, const ValueType& type, std::string_view what) const {
  const ValueType& own = contents_[cell].type;
  if (alike(own, type)) return;
  fail("sheet.dimension",
       names_.name(cell) + " is " + own.name() + ", but the " + std::string(what) + " is " +
           type.name(),
       "remove the cell first, or give it another name");
}

void Sheet::set(std::string_view name, const CellValue& given) {
  const Cell found = names_.find(name);
  const CellValue value = found == no_cell ? given : fitted(given, contents_[found].type);
  if (found != no_cell) {
    if (contents_[found].formula) {
      fail("sheet.formula",
           std::string(name) + " has the formula " + excerpt(contents_[found].text),
           "override it to put a measured value in its place");
    }
    expect_same_type(found, type_of(value), "value");
  }
  const Cell cell = known_or_new(name);
  contents_[cell].type = type_of(value);
  contents_[cell].given = number_of(value);
  recompute(cell);
}

void Sheet::define(std::string_view name, std::string_view formula) {
  const Cell found = names_.find(name);
  if (found == no_cell) expect_cell_name(name);
  Formula compiled;
  try {
    compiled = compile(formula, NamesOfSheet(*this));
  } catch (const Error& error) {
    throw error.at(place_of(std::string(name), error));
  }
  if (found != no_cell) {
    if (!uses_.readers_of(found).empty()) expect_same_type(found, compiled.type, "formula");
    const std::vector<Cell> chain = uses_.cycle(found, compiled.inputs);
    if (!chain.empty()) fail_cycle(chain);
  }
  const Cell cell = known_or_new(name);
  uses_.read(cell, compiled.inputs);
  Content& content = contents_[cell];
  content.type = compiled.type;
  content.text = formula;
  content.formula = std::move(compiled);
  recompute(cell);
}

void Sheet::fail_cycle(const std::vector<Cell>& chain) const {
  std::string links;
  for (const Cell cell : chain) links += (links.empty() ? "" : " reads ") + names_.name(cell);
  fail("sheet.cycle", "a cell cannot depend on itself: " + links);
}

void Sheet::override_value(std::string_view name, Override with) {
  const Cell cell = known(name);
  if (trimmed(with.why).empty()) {
    fail("sheet.reason", "the override of " + std::string(name) + " gives no reason",
         "say what was measured, and how");
  }
  with.value = fitted(with.value, contents_[cell].type);
  expect_same_type(cell, type_of(with.value), "override");
  contents_[cell].instead = std::move(with);
  recompute(cell);
}

void Sheet::release(std::string_view name) {
  const Cell cell = known(name);
  if (!contents_[cell].instead) {
    fail("sheet.released", std::string(name) + " has no override to release");
  }
  contents_[cell].instead.reset();
  recompute(cell);
}

void Sheet::remove(std::string_view name) {
  const Cell cell = known(name);
  const std::vector<Cell>& readers = uses_.readers_of(cell);
  if (!readers.empty()) {
    fail("sheet.read",
         std::string(name) + " is read by " + names_.name(readers.front()) +
             (readers.size() > 1 ? " and " + std::to_string(readers.size() - 1) + " more" : ""),
         "remove or change what reads it first");
  }
  uses_.read(cell, {});
  contents_[cell] = {};
  values_[cell] = Rational();
  failed_[cell] = 0;
  held_.erase(cell);
  names_.remove(cell);
  ran_.clear();
}

CellValue Sheet::told(Cell cell, const Rational& value) const {
  const ValueType& type = contents_[cell].type;
  if (type.kind == ValueKind::flag) return !value.is_zero();
  return Quantity::of_coherent(value, type.shown);
}

CellValue Sheet::value(std::string_view name) const {
  const Cell cell = known(name);
  if (failed_[cell] != 0) throw Error(held_.at(cell).error);
  return told(cell, values_[cell]);
}

const std::string& Sheet::formula(std::string_view name) const { return contents_[known(name)].text; }

std::vector<std::string> Sheet::ran() const {
  std::vector<std::string> names;
  names.reserve(ran_.size());
  for (const Cell cell : ran_) names.push_back(names_.name(cell));
  return names;
}

void Sheet::recompute(Cell changed) {
  ran_.clear();
  due_.add(changed, uses_.height(changed));
  while (!due_.empty()) {
    const Cell cell = due_.take();
    if (!run_cell(cell)) continue;
    for (const Cell reader : uses_.readers_of(cell)) due_.add(reader, uses_.height(reader));
  }
}

/// Whether the cell came out another than before.
bool Sheet::run_cell(Cell cell) {
  const Content& content = contents_[cell];
  if (content.instead) return keep(cell, number_of(content.instead->value));
  if (!content.formula) return keep(cell, content.given);
  ran_.push_back(cell);
  try {
    return keep(cell, run(*content.formula, {values_.data(), failed_.data(), stack_}));
  } catch (const InputFailed& input) {
    return hold(cell, held_.at(input.cell));
  } catch (const Error& error) {
    return hold(cell, {error.at(place_of(names_.name(cell), error)), cell});
  }
}

bool Sheet::keep(Cell cell, const Rational& value) {
  const bool same = failed_[cell] == 0 && values_[cell] == value;
  if (failed_[cell] != 0) held_.erase(cell);
  failed_[cell] = 0;
  values_[cell] = value;
  return !same;
}

bool Sheet::hold(Cell cell, Held held) {
  const auto known = held_.find(cell);
  const bool same = known != held_.end() && known->second.origin == held.origin &&
                    std::string_view(known->second.error.what()) == held.error.what();
  failed_[cell] = 1;
  values_[cell] = Rational();
  held_.insert_or_assign(cell, std::move(held));
  return !same;
}

}  // namespace scalepan
