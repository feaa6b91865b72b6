// Names of cells.
//
//   name = word { "." word }
//   word = lower-case letter or "_" { lower-case letter | digit | "_" }
//
// A word of the formulas or a name of a unit is no name of a cell, so that no formula can be read
// in two ways.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace scalepan {

using Cell = std::uint32_t;
inline constexpr Cell no_cell = static_cast<Cell>(-1);

/// Throws `sheet.name` for a text that is no name.
void expect_cell_name(std::string_view name);

class CellNames {
 public:
  /// `no_cell` where no cell is called so.
  [[nodiscard]] Cell find(std::string_view name) const;
  /// The name must be free and sound. Numbers of removed cells are given again.
  Cell add(std::string_view name);
  void remove(Cell cell);
  void rename(Cell cell, std::string_view name);
  [[nodiscard]] const std::string& name(Cell cell) const { return names_[cell]; }
  [[nodiscard]] std::vector<std::string> nearest(std::string_view name) const;
  /// So many numbers have been given; some may be free again.
  [[nodiscard]] std::size_t size() const { return names_.size(); }

 private:
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view text) const {
      return std::hash<std::string_view>{}(text);
    }
  };

  std::vector<std::string> names_;
  std::vector<Cell> free_;
  std::unordered_map<std::string, Cell, Hash, std::equal_to<>> cells_;
};

}  // namespace scalepan
