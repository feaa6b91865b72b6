// The sheet: edits of a chain, a fan and rows, one price of many recipes, and bytes a cell.
//
// Rows are <row>/<program>; sheet_peer.mjs beside this file has the same graphs on doubles. Times
// are of the processor, for one `apply` of a change that was made before. All edits are of other
// figures than before, so that no formula comes out the same.
#include <benchmark/benchmark.h>
#include <malloc.h>

#include <cstdint>
#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

#include "measure/amount.hpp"
#include "measure/quantity.hpp"
#include "sheet/functions.hpp"
#include "sheet/sheet.hpp"
#include "sheet_peers.hpp"

namespace {

using scalepan::AddBlock;
using scalepan::AddRow;
using scalepan::CellValue;
using scalepan::Change;
using scalepan::Define;
using scalepan::NewColumn;
using scalepan::Rational;
using scalepan::Set;
using scalepan::Sheet;

using Changes = std::vector<Change>;
using SheetPointer = std::unique_ptr<Sheet>;

constexpr std::size_t formula_count = 100'000;
constexpr std::size_t row_count = 1000;
constexpr std::size_t column_count = 10;
constexpr std::size_t edit_count = 64;

SheetPointer sheet_of(const Changes& changes) {
  auto sheet = std::make_unique<Sheet>(std::make_shared<const scalepan::FunctionTable>());
  sheet->apply(changes);
  return sheet;
}

CellValue quantity(const std::string& text) {
  const scalepan::Quantity read = scalepan::parse_quantity(text);
  return {scalepan::quantity_type(read.unit()), read.coherent()};
}

CellValue number(std::size_t whole) {
  return {scalepan::quantity_type({}), Rational(static_cast<std::int64_t>(whole))};
}

std::string numbered(const std::string& front, std::size_t i) { return front + std::to_string(i); }

void expect(const Sheet& sheet, const std::string& cell, const Rational& value) {
  if (std::get<Rational>(sheet.value(cell).value) == value) return;
  throw std::logic_error(cell + " came out as " + sheet.told(cell));
}

Changes chain_changes() {
  Changes changes{Set{"c0", number(0)}};
  for (std::size_t i = 1; i <= formula_count; ++i) {
    changes.emplace_back(Define{numbered("c", i), numbered("c", i - 1) + " + 1"});
  }
  return changes;
}

Changes fan_changes() {
  Changes changes{Set{"base", number(0)}};
  for (std::size_t i = 1; i <= formula_count; ++i) {
    changes.emplace_back(Define{numbered("c", i), "base + 1"});
  }
  return changes;
}

Changes rows_changes() {
  std::vector<NewColumn> columns{{"c0", scalepan::quantity_type({}), {}}};
  for (std::size_t i = 1; i <= column_count; ++i) {
    columns.push_back({numbered("c", i), {}, numbered("c", i - 1) + " + 1"});
  }
  Changes changes{AddBlock{"lines", columns}};
  for (std::size_t i = 0; i < row_count; ++i) {
    changes.emplace_back(AddRow{"lines", numbered("line", i), {{"c0", number(i)}}});
  }
  changes.emplace_back(Define{"total", "sum(lines.c10)"});
  return changes;
}

/// In turns, of another value each.
std::vector<Changes> edits_of(const std::string& cell) {
  std::vector<Changes> edits;
  for (std::size_t i = 1; i <= edit_count; ++i) edits.push_back({Set{cell, number(i)}});
  return edits;
}

void edit(benchmark::State& state, Sheet& sheet, const std::vector<Changes>& edits,
          std::size_t items) {
  std::size_t i = 0;
  for (auto _ : state) sheet.apply(edits[i++ % edits.size()]);
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(items));
}

template <typename Engine>
void edit_doubles(benchmark::State& state) {
  Engine engine(formula_count);
  double value = 0.0;
  for (auto _ : state) {
    engine.edit(value += 1.0);
    benchmark::DoNotOptimize(engine.top());
    benchmark::ClobberMemory();
  }
  if (engine.top() != value + static_cast<double>(formula_count)) {
    throw std::logic_error("a chain of doubles came out wrong");
  }
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(formula_count));
}

std::size_t bytes_in_use() {
  const struct mallinfo2 info = mallinfo2();
  return info.uordblks + info.hblkhd;
}

/// A sheet with what it takes of the heap; made once.
struct Weighed {
  explicit Weighed(const Changes& changes) {
    const std::size_t before = bytes_in_use();
    sheet = sheet_of(changes);
    bytes = bytes_in_use() - before;
  }

  SheetPointer sheet;
  std::size_t bytes = 0;
};

Weighed& chain() {
  static Weighed weighed = [] {
    Weighed made(chain_changes());
    expect(*made.sheet, "c100000", formula_count);
    return made;
  }();
  return weighed;
}

// Recipes of 20 lines, all in one sheet: each line reads its price from a cell, as others do. What
// is needed and what it costs is invented.

constexpr std::size_t recipe_count = 2000;
constexpr std::size_t line_count = 20;
constexpr std::size_t price_count = 200;

std::string price_cell(std::size_t i) { return numbered("price.item", i); }

CellValue price(std::size_t cents) { return quantity(std::to_string(cents) + "/100 EUR/kg"); }

/// Of `price_count / times` prices, all read by as many lines, none of them twice in a recipe.
std::size_t price_of(std::size_t line, std::size_t times) {
  const std::size_t place = line % line_count;
  const std::size_t turn = line / line_count % (price_count / line_count);
  return place + line_count * (turn / times);
}

CellValue need(std::size_t grams) { return quantity(std::to_string(grams) + " g"); }

Changes recipes_changes(std::size_t times) {
  Changes changes;
  for (std::size_t i = 0; i < price_count / times; ++i) {
    changes.emplace_back(Set{price_cell(i), price(i)});
  }
  for (std::size_t recipe = 0; recipe < recipe_count; ++recipe) {
    const std::string lines = numbered("recipe", recipe);
    changes.emplace_back(AddBlock{
        lines,
        {{"need", need(0).type, {}}, {"price", price(0).type, {}}, {"cost", {}, "need * price"}}});
    for (std::size_t line = 0; line < line_count; ++line) {
      const std::size_t at = recipe * line_count + line;
      changes.emplace_back(AddRow{
          lines,
          numbered("line", at),
          {{"need", need(5 * recipe + line)}, {"price", {}, {}, price_cell(price_of(at, times))}}});
    }
    changes.emplace_back(Define{numbered("total", recipe), "sum(" + lines + ".cost)"});
  }
  return changes;
}

template <std::size_t Times>
Sheet& recipes() {
  static const SheetPointer sheet = sheet_of(recipes_changes(Times));
  return *sheet;
}

CellValue new_price(std::size_t edit) { return price(1037 + 101 * edit); }

/// One price each, in turns: those that no recipe has together follow each other, so that an edit
/// finds nothing of the one before in the nearest cache.
std::vector<Changes> price_edits(std::size_t prices) {
  const std::size_t groups = prices / line_count;
  std::vector<Changes> edits;
  for (std::size_t i = 0; i < 4 * price_count; ++i) {
    const std::size_t item = i % groups * line_count + i / groups % line_count;
    edits.push_back({Set{price_cell(item), new_price(i)}});
  }
  return edits;
}

std::vector<Changes> edits_of_all_prices() {
  std::vector<Changes> edits(edit_count);
  for (std::size_t i = 0; i < edit_count; ++i) {
    for (std::size_t item = 0; item < price_count; ++item) {
      edits[i].emplace_back(Set{price_cell(item), new_price(i + item)});
    }
  }
  return edits;
}

using Measure = void (*)(benchmark::State&);

void add_row(const char* name, Measure measure) { benchmark::RegisterBenchmark(name, measure); }

template <std::size_t Times>
void edit_price(benchmark::State& state) {
  edit(state, recipes<Times>(), price_edits(price_count / Times), 1);
}

}  // namespace

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  chain();  // first, while the heap has no holes
  add_row("sheet/chain/scalepan", [](benchmark::State& state) {
    edit(state, *chain().sheet, edits_of("c0"), formula_count);
    state.counters["bytes"] = static_cast<double>(chain().bytes) / formula_count;
    state.counters["own_bytes"] = static_cast<double>(chain().sheet->bytes()) / formula_count;
  });
  add_row("sheet/chain/double_loop", edit_doubles<peers::DoubleLoop>);
  add_row("sheet/chain/double_engine", edit_doubles<peers::DoubleEngine>);
  add_row("sheet/fan-out/scalepan", [](benchmark::State& state) {
    static const SheetPointer sheet = sheet_of(fan_changes());
    edit(state, *sheet, edits_of("base"), formula_count);
  });
  add_row("sheet/rows/scalepan", [](benchmark::State& state) {
    static const SheetPointer sheet = [] {
      SheetPointer made = sheet_of(rows_changes());
      expect(*made, "total", row_count * (row_count - 1) / 2 + column_count * row_count);
      return made;
    }();
    edit(state, *sheet, edits_of("line500.c0"), 1);
  });
  add_row("sheet/one price/scalepan", edit_price<1>);
  add_row("sheet/one price/all_prices",
          [](benchmark::State& state) { edit(state, recipes<1>(), edits_of_all_prices(), 1); });
  add_row("sheet/one price of 400 lines/scalepan", edit_price<2>);
  add_row("sheet/one price of 1000 lines/scalepan", edit_price<5>);
  benchmark::RunSpecifiedBenchmarks();
}
