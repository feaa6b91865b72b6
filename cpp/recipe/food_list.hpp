// What follows the name of a food: further foods that share its amount, choices, a noun.
#pragma once

#include <cstddef>
#include <vector>

#include "recipe/line_segments.hpp"
#include "recipe/line_source.hpp"
#include "recipe/written_line.hpp"

namespace scalepan {

/// `sage, thyme, and marjoram`; `potato-flour, arrowroot, or tapioca`: adds the segments behind
/// the one that names the first food to the line's foods or alternatives, and empties them.
void take_lists(WrittenLine& line, std::vector<Segment>& segments, std::size_t head,
                const LineSource& source);

/// `2 garlic cloves`, `3 thyme sprigs`: makes the noun behind a counted food its unit.
void take_noun_behind(WrittenLine& line, const LineSource& source);

/// `2 (1-inch thick) slices bread`: makes the noun in front of the food, behind the bracket, the
/// line's unit, and takes it off the segment.
void take_unit_behind_bracket(WrittenLine& line, Segment& segment, const LineSource& source);

}  // namespace scalepan
