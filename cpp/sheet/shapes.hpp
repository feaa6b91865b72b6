// Formulas of one shape share a programme.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "sheet/compile.hpp"
#include "sheet/unit_memo.hpp"

namespace scalepan {

/// What can be told of a formula without parsing it: its shape, and what its names mean.
class Scan {
 public:
  /// False where it stopped at a name that means nothing or at what is no word; what came before
  /// is known then too.
  bool read(std::string_view text, const Names& names, UnitMemo& units);

  [[nodiscard]] const std::string& shape() const { return shape_; }
  [[nodiscard]] const std::vector<std::uint32_t>& occurrences() const { return occurrences_; }
  [[nodiscard]] const std::vector<std::uint32_t>& cells() const { return cells_; }
  [[nodiscard]] const std::vector<ValueType>& types() const { return types_; }
  [[nodiscard]] std::size_t hash() const;

 private:
  struct Written {
    std::string_view name;
    bool total;
  };

  void clear();
  bool find_names(std::string_view text, UnitMemo& units);
  std::uint32_t input_for(const Names::Found& found);

  std::string shape_;
  std::vector<Written> names_;
  std::vector<std::uint32_t> occurrences_;
  std::vector<std::uint32_t> cells_;
  std::vector<ValueType> types_;
  std::unordered_map<std::uint32_t, std::uint32_t> places_;  // of cells, where there are many
};

/// Programmes by shape, as long as a formula holds them.
class ShapeTable {
 public:
  /// Null where none is known.
  [[nodiscard]] std::shared_ptr<const Programme> find(std::size_t hash, const Scan& scan) const;
  void add(std::size_t hash, const std::shared_ptr<const Programme>& programme);

 private:
  struct Slot {
    std::size_t hash = 0;
    bool taken = false;
    std::weak_ptr<const Programme> programme;
  };
  void put(Slot slot);
  void make_room();

  std::vector<Slot> slots_;  // as many as a power of two, at most half of them taken
  std::size_t taken_ = 0;
};

}  // namespace scalepan
