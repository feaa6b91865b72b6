// What the cells of a sheet are told to be.
#pragma once

#include <optional>
#include <string>
#include <unordered_map>
#include <utility>
#include <vector>

#include "sheet/cell.hpp"
#include "sheet/formula.hpp"

namespace scalepan {

/// A value that a cell is given, and how it is shown.
struct CellValue {
  ValueType type;
  Value value{};

  friend bool operator==(const CellValue& a, const CellValue& b) {
    return a.type == b.type && same_value(a.value, b.value);
  }
};

/// The value as a cell of this type takes it: a bare number is of the unit the cell is shown in.
[[nodiscard]] CellValue fitted(const CellValue& value, const ValueType& type);

/// A measured value in the place of a cell's own, and who put it there, when and why.
struct Override {
  CellValue value;
  std::string why;
  std::string who;
  std::string when;
};

enum class ContentKind : std::uint8_t { none, given, formula, total };

/// A value, and where it comes from.
struct GivenValue {
  CellValue value;
  std::string source;
};

/// All that one cell is told; what does not go with its kind is empty.
struct Content {
  ContentKind kind = ContentKind::none;
  CellValue given;
  std::string source;  // where a given value comes from
  Formula formula;
  std::size_t total = 0;  // which of the totals
  std::optional<Override> instead;
};

/// What cells are told, by cell; programmes that formulas share are held once.
class Contents {
 public:
  explicit Contents(CellRecords& cells) : cells_(cells) {}

  [[nodiscard]] ContentKind kind(Cell cell) const {
    return static_cast<ContentKind>(cells_[cell].kind & kind_bits);
  }
  [[nodiscard]] bool is_overridden(Cell cell) const {
    return (cells_[cell].kind & overridden_bit) != 0;
  }
  /// Whether a formula is what the cell comes from now.
  [[nodiscard]] bool runs(Cell cell) const {
    return cells_[cell].kind == static_cast<std::uint8_t>(ContentKind::formula);
  }
  /// Of a cell with a formula.
  [[nodiscard]] const Programme& programme(Cell cell) const {
    return *programmes_[cells_[cell].detail].programme;
  }
  [[nodiscard]] std::shared_ptr<const Programme> shared_programme(Cell cell) const {
    return programmes_[cells_[cell].detail].programme;
  }
  /// Of a given cell.
  [[nodiscard]] const CellValue& given(Cell cell) const {
    return givens_[cells_[cell].detail].value;
  }
  [[nodiscard]] const std::string& source(Cell cell) const {
    return givens_[cells_[cell].detail].source;
  }
  /// Of a total: which one.
  [[nodiscard]] std::size_t total(Cell cell) const { return cells_[cell].detail; }
  /// Of an overridden cell.
  [[nodiscard]] const Override& instead(Cell cell) const { return overrides_.at(cell); }

  void put_given(Cell cell, CellValue value, std::string source);
  /// Gives back what the cell was given before.
  GivenValue swap_given(Cell cell, GivenValue given) {
    return std::exchange(givens_[cells_[cell].detail], std::move(given));
  }
  void put_formula(Cell cell, std::shared_ptr<const Programme> programme);
  void put_total(Cell cell, std::size_t total);
  void put_override(Cell cell, std::optional<Override> instead);
  void clear(Cell cell);

 private:
  struct Shared {
    std::shared_ptr<const Programme> programme;
    std::size_t cells = 0;
  };

  static constexpr std::uint8_t kind_bits = 3;
  static constexpr std::uint8_t overridden_bit = 4;

  void drop_detail(Cell cell);
  void set_kind(Cell cell, ContentKind kind);

  CellRecords& cells_;
  std::vector<GivenValue> givens_;
  std::vector<std::uint32_t> free_givens_;
  std::vector<Shared> programmes_;
  std::vector<std::uint32_t> free_programmes_;
  std::unordered_map<const Programme*, std::uint32_t> places_;
  std::unordered_map<Cell, Override> overrides_;
};

}  // namespace scalepan
