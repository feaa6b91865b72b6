// The way from one input to some outputs, taken out of its sheet: what lies on it is worked out
// anew for each value of the input, what lies beside it is held as it stands. The sheet may change
// meanwhile.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "sheet/figures.hpp"
#include "sheet/state.hpp"

namespace scalepan {

/// A formula or a total on the way. Cells are numbered anew, as places.
struct PathStep {
  Cell place = no_cell;
  std::string name;
  std::shared_ptr<const Programme> programme;  // none: the total of a column
  std::vector<Cell> inputs;                    // places; of a total, its rows on the way
  std::vector<std::string> input_names;
  Total beside;  // of a total: what its rows beside the way come to
};

struct Path {
  Figures figures;  // by place
  std::size_t places = 0;
  std::vector<PathStep> steps;  // in the order they are worked out in
  std::vector<Cell> outputs;    // places
  std::vector<ValueType> output_types;
  std::vector<std::string> output_names;
  ValueType input_type;
  std::string input_name;
  static constexpr Cell input = 0;  // its place
};

/// Throws `sheet.unknown`, `sheet.formula` for an input that follows from others itself now, and
/// `sheet.type` for one that is no single number.
[[nodiscard]] Path path_between(const SheetState& state, std::string_view input,
                                const std::vector<std::string>& outputs);

}  // namespace scalepan
