#include "packs/price_number.hpp"

#include <optional>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"

namespace scalepan {

namespace {

/// The whole rest of the text as one number.
std::optional<Rational> number_or_nothing(std::string_view text, std::size_t position) {
  try {
    auto value = read_amount_number(text, position);
    return position == text.size() ? value : std::nullopt;
  } catch (const Error& error) {
    if (error.code() == "number.comma" || error.code() == "number.doubtful") return std::nullopt;
    throw;
  }
}

[[noreturn]] void fail_tax(std::string_view text) {
  fail("price.tax", "\"" + excerpt(text) + "\" does not say a tax",
       "write 7 % where the price has it in it, or 7 % added");
}

}  // namespace

Rational read_price_number(std::string_view text) {
  const std::string_view written = trimmed(text);
  const auto start = static_cast<std::size_t>(written.data() - text.data());
  const auto value = number_or_nothing(text.substr(0, start + written.size()), start);
  if (!value) {
    fail_at(start, "price.unreadable", "\"" + excerpt(written) + "\" is no price",
            "write a number such as 1.05, and the currency's code in its own column");
  }
  if (value->sign() < 0) {
    fail_at(start, "price.negative", "the price " + excerpt(written) + " is below zero");
  }
  return *value;
}

PriceTax read_price_tax(std::string_view text) {
  const std::string_view written = trimmed(text);
  const std::size_t sign = written.find('%');
  if (sign == std::string_view::npos) fail_tax(written);
  const std::string_view number = trimmed(written.substr(0, sign));
  const auto percent = number.empty() ? std::nullopt : number_or_nothing(number, 0);
  const std::string word = lower(trimmed(written.substr(sign + 1)));
  if (!percent || percent->sign() < 0) fail_tax(written);
  if (!word.empty() && word != "included" && word != "added") fail_tax(written);
  if (*percent > Rational(100)) {
    fail("price.tax",
         "a tax of " + exact_text(*percent) + " % is more than the price that it comes on");
  }
  return {*percent / Rational(100), word != "added"};
}

}  // namespace scalepan
