// The live sheet: named cells, of which some are given and some follow by formulas.
//
// Changing one cell runs the formulas that depend on it, each once, and no others; it stops where
// a figure came out the same. A formula that fails leaves its error in its cell and in those that
// read it, until what is wrong is mended.
//
// A change that is refused leaves the sheet as it was.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "exact/error.hpp"
#include "measure/quantity.hpp"
#include "sheet/compile.hpp"
#include "sheet/due.hpp"
#include "sheet/uses.hpp"

namespace scalepan {

/// A quantity, or yes or no.
using CellValue = std::variant<Quantity, bool>;

/// A measured value in a formula's place, and who put it there, when and why.
struct Override {
  CellValue value;
  std::string why;
  std::string who;
  std::string when;
};

class Sheet {
 public:
  Sheet();

  /// Gives a value. A new cell takes its dimension from it and keeps it; then a bare number is of
  /// the unit the cell is shown in. Throws `sheet.name`,
  /// `sheet.formula` for a cell that has a formula, and `sheet.dimension`.
  void set(std::string_view name, const CellValue& given);
  /// Gives a formula, to a new cell or in place of what it had. Throws `sheet.name`, what `compile`
  /// throws with the cell's place, `sheet.cycle` with the chain, and `sheet.dimension` where cells
  /// that read it need the dimension it had.
  void define(std::string_view name, std::string_view formula);
  /// Puts a value in the place of the cell's own, until released. Throws `sheet.unknown`,
  /// `sheet.reason` where no reason is given, and `sheet.dimension`.
  void override_value(std::string_view name, Override with);
  /// Throws `sheet.unknown`, and `sheet.released` for a cell that has no override.
  void release(std::string_view name);
  /// Throws `sheet.unknown`, and `sheet.read` where other cells read it.
  void remove(std::string_view name);

  /// Throws `sheet.unknown`, and the error the cell holds, with the cell it arose in.
  [[nodiscard]] CellValue value(std::string_view name) const;
  /// As written; empty for a cell that is given. Throws `sheet.unknown`.
  [[nodiscard]] const std::string& formula(std::string_view name) const;
  [[nodiscard]] bool has(std::string_view name) const { return names_.find(name) != no_cell; }
  /// How the figure comes about, as a tree of text. Throws `sheet.unknown`.
  [[nodiscard]] std::string why(std::string_view name) const;
  /// The formulas that the last change ran, in the order they ran in.
  [[nodiscard]] std::vector<std::string> ran() const;

 private:
  /// What a cell is told to be.
  struct Content {
    ValueType type;
    Rational given;  // of a cell without a formula
    std::string text;
    std::optional<Formula> formula;
    std::optional<Override> instead;
  };

  /// An error, and the cell it arose in.
  struct Held {
    Error error;
    Cell origin;
  };

  class NamesOfSheet;
  class Teller;

  [[nodiscard]] Cell known(std::string_view name) const;
  [[nodiscard]] Cell known_or_new(std::string_view name);
  void expect_same_type(Cell cell, const ValueType& type, std::string_view what) const;
  [[noreturn]] void fail_cycle(const std::vector<Cell>& chain) const;
  [[nodiscard]] CellValue told(Cell cell, const Rational& value) const;
  void recompute(Cell changed);
  [[nodiscard]] bool run_cell(Cell cell);
  bool keep(Cell cell, const Rational& value);
  bool hold(Cell cell, Held held);

  CellNames names_;
  Uses uses_;
  DueCells due_;
  std::vector<Content> contents_;     // by cell
  std::vector<Rational> values_;      // the same
  std::vector<std::uint8_t> failed_;  // the same
  std::map<Cell, Held> held_;
  std::vector<Cell> ran_;
  std::vector<Rational> stack_;
};

}  // namespace scalepan
