#include "recipe/share_phrase.hpp"

#include <algorithm>

#include "exact/error.hpp"
#include "recipe/cursor.hpp"
#include "recipe/number_words.hpp"

namespace scalepan {

namespace {

std::optional<Rational> read_number(Cursor& cursor, DecimalMark mark) {
  cursor.skip_spaces();
  std::size_t at = cursor.at();
  if (auto number = read_amount_number(cursor.text(), at, mark)) {
    cursor.move_to(at);
    return number;
  }
  return read_number_words(cursor);
}

/// Moves behind `rest`, `the rest`, `all`, `a number`; the name is still to come.
std::optional<SharePhrase> read_part(Cursor& cursor, DecimalMark mark) {
  SharePhrase phrase;
  if (cursor.take_words("the rest") || cursor.take_word("rest")) {
    phrase.kind = ShareKind::rest;
    return phrase;
  }
  if (cursor.take_word("all")) return phrase;
  const auto number = read_number(cursor, mark);
  if (!number) return std::nullopt;
  phrase.amount = *number;
  if (cursor.take_word("portions") || cursor.take_word("portion")) {
    phrase.kind = ShareKind::portions;
  } else if (cursor.take_sign("%")) {
    phrase.amount = *number / Rational(100);
  } else if (!same_word(cursor.word(), "of") && !same_word(cursor.word(), "the")) {
    return std::nullopt;
  }
  return phrase;
}

std::string sum_text(const std::vector<std::optional<Rational>>& parts, const Rational& sum) {
  std::string text;
  for (const auto& part : parts) {
    if (part) text += (text.empty() ? "" : " + ") + mixed_text(*part);
  }
  return parts.size() > 1 && text.find('+') != std::string::npos ? text + " = " + mixed_text(sum)
                                                                 : text;
}

}  // namespace

std::optional<SharePhrase> read_share_phrase(std::string_view text, DecimalMark mark) {
  Cursor cursor(text);
  auto phrase = read_part(cursor, mark);
  if (!phrase) return std::nullopt;
  cursor.take_word("of");
  cursor.take_word("the");
  const std::string_view name = trimmed(cursor.rest());
  if (name.empty()) return std::nullopt;
  phrase->name_at = offset_in(text, name);
  phrase->name = name;
  return phrase;
}

std::vector<Rational> settle_shares(const std::vector<std::optional<Rational>>& parts,
                                    std::string_view whole) {
  Rational sum;
  for (const auto& part : parts) sum += part.value_or(Rational(0));
  const auto rests = std::ranges::count_if(parts, [](const auto& part) { return !part; });
  const std::string name(whole);
  if (rests > 1) {
    fail_at(0, "share.two_rests", "two of the uses of " + name + " take the rest of it",
            "give one of them a share");
  }
  if (sum > Rational(1)) {
    fail_at(0, "share.over",
            "the uses of " + name + " come to " + sum_text(parts, sum) + ", more than the whole",
            "make the shares smaller, or let one take the rest");
  }
  if (rests == 1 && sum == Rational(1)) {
    fail_at(0, "share.no_rest",
            "nothing of " + name + " is left for the rest: the other uses come to " +
                sum_text(parts, sum));
  }
  std::vector<Rational> settled;
  for (const auto& part : parts) settled.push_back(part ? *part : Rational(1) - sum);
  return settled;
}

}  // namespace scalepan
