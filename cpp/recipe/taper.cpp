#include "recipe/taper.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"
#include "recipe/cursor.hpp"

namespace scalepan {

namespace {

struct Row {
  std::string_view name;
  std::string_view points;
  std::string_view source;
};

constexpr std::array rows = std::to_array<Row>({
    {"herbs", "(2, 2), then 1/2",
     "Baron Spices, Spice Handbook, \"Scaling up recipes\": herbs, nutmeg, mace (a trade leaflet)"},
    {"red pepper", "(2, 2), then 1/4",
     "Baron Spices, Spice Handbook, \"Scaling up recipes\": ground red pepper (a trade leaflet)"},
    {"when doubling", "(2, 1.5)",
     "Idaho State Department of Education, \"How to Double a Recipe\": all spices and herbs times "
     "1.5"},
});

constexpr std::string_view example = "write points: tapered (2, 1.5), (4, 2), then 1/4";

[[noreturn]] void fail_taper(std::string_view text) {
  fail_at(0, "rule.taper", "\"" + excerpt(text) + "\" is no taper", std::string(example));
}

class TaperReader {
 public:
  explicit TaperReader(std::string_view text) : text_(text), cursor_(text) {}

  Ramp read() {
    std::vector<Ramp::Point> points;
    std::optional<Rational> further;
    do {
      if (cursor_.take_word("then")) {
        further = number(text_.size());
        break;
      }
      points.push_back(point());
    } while (cursor_.take_sign(","));
    if (!cursor_.skip_spaces().done() || points.empty()) fail_taper(text_);
    add_written_size(points);
    return {std::move(points), std::move(further)};
  }

 private:
  /// A number that ends at `end` or before.
  Rational number(std::size_t end) {
    cursor_.skip_spaces();
    std::size_t at = std::min(cursor_.at(), end);
    const auto value = read_amount_number(text_.substr(0, end), at);
    if (!value) fail_taper(text_);
    cursor_.move_to(at);
    return *value;
  }

  Ramp::Point point() {
    if (!cursor_.take_sign("(")) fail_taper(text_);
    Ramp::Point read;
    // A comma in the brackets parts two numbers, also without a space behind it.
    read.first = number(std::min(text_.find(',', cursor_.at()), text_.size()));
    if (!cursor_.take_sign(",")) fail_taper(text_);
    read.second = number(text_.size());
    if (!cursor_.take_sign(")")) fail_taper(text_);
    return read;
  }

  /// The written size has the written amount.
  void add_written_size(std::vector<Ramp::Point>& points) const {
    const Ramp::Point written{1, 1};
    for (auto point = points.begin(); point != points.end(); ++point) {
      if (point->first < Rational(1)) continue;
      if (*point == written) return;
      if (point->first == Rational(1)) {
        fail_at(0, "rule.taper",
                "the taper gives " + exact_text(point->second) +
                    " times the amount at the "
                    "written size, but that has the amount as it is written");
      }
      points.insert(point, written);
      return;
    }
    points.push_back(written);
  }

  std::string_view text_;
  Cursor cursor_;
};

const Row& row_named(std::string_view name) {
  std::string names;
  for (const Row& row : rows) {
    if (row.name == name) return row;
    names += (names.empty() ? "" : ", ") + std::string(row.name);
  }
  fail_at(0, "rule.taper", "no taper is called \"" + excerpt(name) + "\"",
          "there are: " + names + "; or " + std::string(example));
}

}  // namespace

Ramp parse_taper(std::string_view text) { return TaperReader(trimmed(text)).read(); }

std::string text_of(const Ramp& taper) {
  const auto point_text = [](const Ramp::Point& point) {
    return "(" + exact_text(point.first) + ", " + exact_text(point.second) + ")";
  };
  const Ramp::Point written{1, 1};
  std::string text;
  for (const Ramp::Point& point : taper.points()) {
    if (point == Ramp::Point{} || point == written) continue;  // every taper has these two
    text += (text.empty() ? "" : ", ") + point_text(point);
  }
  if (text.empty()) text = point_text(written);
  if (taper.further()) text += ", then " + exact_text(*taper.further());
  return text;
}

Ramp taper_named(std::string_view name) { return parse_taper(row_named(name).points); }

std::string_view source_of_taper(std::string_view name) { return row_named(name).source; }

}  // namespace scalepan
