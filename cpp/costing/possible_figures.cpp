#include "costing/possible_figures.hpp"

#include <algorithm>
#include <array>
#include <string>

#include "exact/error.hpp"
#include "exact/number_text.hpp"

namespace scalepan {

namespace {

enum class Bounds : std::uint8_t { share, above_zero, not_below_zero };

struct Bounded {
  std::string_view figure;  // the last word of the cell's name
  Bounds bounds;
};

constexpr std::array bounded_figures{
    Bounded{"edible", Bounds::share},
    Bounded{"drained", Bounds::share},
    Bounded{"cooked", Bounds::above_zero},
    Bounded{"density", Bounds::above_zero},
    Bounded{"piece_weight", Bounds::above_zero},
    Bounded{"portions", Bounds::above_zero},
    Bounded{"serves", Bounds::above_zero},
    Bounded{"factor", Bounds::above_zero},
    Bounded{"written", Bounds::not_below_zero},
    Bounded{"need", Bounds::not_below_zero},
    Bounded{"buy", Bounds::not_below_zero},
};

std::string_view told(Bounds bounds) {
  switch (bounds) {
    case Bounds::share:
      return "a share of the whole is above 0 and at most 1";
    case Bounds::above_zero:
      return "it is above 0";
    case Bounds::not_below_zero:
      break;
  }
  return "it is not below 0";
}

bool within(Bounds bounds, const Rational& number) {
  if (bounds == Bounds::not_below_zero) return number.sign() >= 0;
  return number.sign() > 0 && (bounds == Bounds::above_zero || !(number > Rational(1)));
}

bool within(Bounds bounds, const Value& value) {
  if (const auto* number = std::get_if<Rational>(&value)) return within(bounds, *number);
  const auto* interval = std::get_if<Interval>(&value);
  if (interval == nullptr) return true;
  return within(bounds, interval->low) && (!interval->high || within(bounds, *interval->high));
}

void expect_no_line(std::string_view line, std::string_view cell, const CellNames& names) {
  const std::string name(line);
  if (names.find(cell) != no_cell || names.find(name + ".till") == no_cell) return;
  fail("sheet.unknown",
       "no cell is called \"" + std::string(cell) + "\": prices are those of packs",
       "cost with other rows of prices, or override " + name + ".till with what was paid");
}

}  // namespace

void expect_possible(std::string_view cell, const CellValue& value, const CellNames& names) {
  const std::string_view figure = cell.substr(cell.rfind('.') + 1);
  if (figure == "price") expect_no_line(cell.substr(0, cell.rfind('.')), cell, names);
  const auto* known = std::ranges::find(bounded_figures, figure, &Bounded::figure);
  if (known == bounded_figures.end() || within(known->bounds, value.value)) return;
  const auto* number = std::get_if<Rational>(&value.value);
  const bool percent = known->bounds == Bounds::share && number != nullptr &&
                       number->is_integer() && *number > Rational(1) && !(*number > Rational(100));
  fail("cost.impossible",
       std::string(cell) + " cannot be " + figure_text(value.value, value.type) + ": " +
           std::string(told(known->bounds)),
       percent ? "write " + exact_text(*number) + " % for a percentage" : "");
}

}  // namespace scalepan
