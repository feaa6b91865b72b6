#include "food/caret_table.hpp"

#include "exact/number_text.hpp"
#include "exact/text.hpp"

namespace scalepan {

bool CaretTable::next() {
  while (position_ < file_.text.size()) {
    const std::size_t end = std::min(file_.text.find('\n', position_), file_.text.size());
    row_ = trimmed(file_.text.substr(position_, end - position_));
    position_ = end + 1;
    ++line_;
    if (row_.empty()) continue;
    split();
    return true;
  }
  return false;
}

void CaretTable::split() {
  fields_.clear();
  std::size_t start = 0;
  while (true) {
    const std::size_t end = row_.find('^', start);
    fields_.push_back(row_.substr(start, end - start));
    if (end == std::string_view::npos) break;
    start = end + 1;
  }
  if (fields_.size() == expected_) return;
  fail_in(std::min(fields_.size(), expected_ + 1) - 1,
          "the row has " + std::to_string(fields_.size()) + " fields, " +
              std::to_string(expected_) + " belong there");
}

std::string_view CaretTable::text(std::size_t field) const {
  const std::string_view all = fields_[field];
  if (all.size() < 2 || all.front() != '~' || all.back() != '~') {
    fail_in(field, "a text stands between tildes, but " + excerpt(all) + " is written");
  }
  return trimmed(all.substr(1, all.size() - 2));
}

std::optional<Rational> CaretTable::number(std::size_t field) const {
  const std::string_view digits = fields_[field];
  if (digits.empty()) return std::nullopt;
  try {
    return parse_amount_number(digits);
  } catch (const Error& error) {
    if (error.code() == "number.unreadable") {
      fail_in(field, "a number belongs here, but " + excerpt(digits) + " is written");
    }
    fail_in(field, error.message());
  }
}

void CaretTable::fail_in(std::size_t field, const std::string& message) const {
  const auto offset = static_cast<std::size_t>(fields_[field].data() - row_.data());
  Place at;
  at.offset = offset;
  const Error error("food.release", message, {}, at);
  throw error.at(place_within(Place{file_.name, line_, 1, {}}, row_, error));
}

}  // namespace scalepan
