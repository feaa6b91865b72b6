// Amounts that could mean two things, and numbers that are no amounts.
#pragma once

#include <cstddef>
#include <string_view>

#include "recipe/measure_phrase.hpp"

namespace scalepan {

/// An amount whose number has been read: where it starts, and the cursor behind it.
struct AmountSoFar {
  std::size_t start;
  const NumberPhrase& number;
  Cursor behind;

  [[nodiscard]] std::string_view text() const { return behind.text(); }
  /// From the start of the amount to `end`.
  [[nodiscard]] std::string_view up_to(std::size_t end) const {
    return text().substr(start, end - start);
  }
};

/// Throws `line.no_amount` for `1st`, `25. Apple Pie`, `350°`, `1 eighth`.
void expect_number_alone(const AmountSoFar& amount);

/// Throws `line.price` for `1d. yeast`, `10 cents`: what they bought is not known.
void expect_no_price(const AmountSoFar& amount);

/// Throws `line.temperature` for `180C` and `25c`, the unit being at `at`: cups, degrees or cents.
void expect_no_temperature(const AmountSoFar& amount, std::size_t at);

/// Throws `unit.doubtful` for a letter at `at` that two units share.
void expect_clear_letter(std::string_view letter, std::size_t at, Measures measures);

/// Throws `amount.doubtful` for `1-3 cup`: a third of a cup, or one to three cups. `end` is that
/// of the unit.
void expect_clear_range(const AmountSoFar& amount, const UnitWord& word, std::size_t end);

/// Throws `amount.doubtful` for `2 1/2-inch slices`; `end` is that of the noun.
void expect_clear_size(const AmountSoFar& amount, const UnitWord& word, std::size_t end);

/// Throws `amount.doubtful` for `1 pound cake`, the unit being at `at`.
void expect_no_pound_cake(const UnitWord& word, std::size_t at);

/// Throws `line.two_units` for `2 cans cups`, `1 teaspoon or tablespoon`, `25c a pound`.
/// `amount.behind` is behind the first unit, which is written at `unit_at`.
void expect_one_unit(const AmountSoFar& amount, std::string_view unit, std::size_t unit_at,
                     const Catalog& catalog);

}  // namespace scalepan
