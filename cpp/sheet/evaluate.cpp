#include "sheet/evaluate.hpp"

namespace scalepan {

Error placed_in_formula(const Error& error, std::string_view cell, const Programme* programme,
                        const std::function<std::string(std::size_t)>& name_of_input) {
  Place place;
  place.cell = cell;
  if (programme != nullptr && error.place().offset != Place::no_offset) {
    place.offset = text_offset(*programme, name_of_input, error.place().offset);
    place.column = static_cast<int>(place.offset) + 1;
  }
  return error.at(place);
}

}  // namespace scalepan
