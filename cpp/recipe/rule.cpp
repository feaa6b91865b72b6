#include "recipe/rule.hpp"

#include <optional>
#include <utility>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"
#include "measure/amount.hpp"
#include "recipe/number_words.hpp"

namespace scalepan {

namespace {

constexpr std::string_view known_rules =
    "in proportion, fixed, whole, one per portion, one per 4 portions, 25 g per portion, 15 % "
    "taken "
    "up";

[[noreturn]] void fail_unreadable(std::string_view text) {
  fail_at(0, "rule.unreadable", "\"" + excerpt(text) + "\" is no rule",
          "the rules: " + std::string(known_rules));
}

/// The share in front of `taken up`.
Rational read_share(std::string_view text, std::string_view rule) {
  std::size_t position = 0;
  const auto number = read_amount_number(text, position);
  if (!number || trimmed(text.substr(position)) != "%") fail_unreadable(rule);
  const Rational share = *number / Rational(100);
  if (share.sign() <= 0 || share > Rational(1)) {
    fail_at(0, "rule.share", "\"" + excerpt(text) + "\" is no share of the amount",
            "write a percentage above 0 and up to 100");
  }
  return share;
}

/// The coherent amount before `per`.
Rational read_each(std::string_view text, Unit unit, Measures measures, std::string_view rule) {
  // `one` of a count is one piece, also where the line counts dozens.
  const bool counted = unit.dimension().without_stages() == dimension::piece();
  const Rational step = counted ? Rational(1) : unit.ratio();
  if (const auto number = cardinal(text)) return *number * step;
  std::size_t position = 0;
  const auto amount = read_amount(text, position, measures, UnitStyle::kitchen);
  if (!amount || position < text.size() || amount->is_range() || amount->high.sign() <= 0) {
    fail_unreadable(rule);
  }
  if (!amount->unit) return amount->high * step;
  if (!(amount->unit->dimension() == unit.dimension().without_stages())) {
    fail_at(0, "rule.unit",
            "the rule counts in " + amount->unit->symbol() + ", the line in " +
                unit.without_stages().symbol());
  }
  return amount->high;
}

/// The number of portions after `per`.
Rational read_portions(std::string_view text, std::string_view rule) {
  if (text == "portion") return 1;
  std::size_t position = 0;
  const std::size_t space = text.find(' ');
  auto number = cardinal(text.substr(0, space));
  if (number) {
    position = space == std::string_view::npos ? text.size() : space;
  } else {
    number = read_amount_number(text, position);
  }
  const std::string_view rest = trimmed(text.substr(position));
  if (!number || number->sign() <= 0 || (rest != "portions" && rest != "portion")) {
    fail_unreadable(rule);
  }
  return *number;
}

}  // namespace

Rule parse_rule(std::string_view text, Unit unit, Measures measures) {
  const std::string_view rule = trimmed(text);
  if (rule == "in proportion") return {};
  if (rule == "fixed") return {RuleKind::fixed, 1, 1};
  if (rule == "whole") return {RuleKind::whole, 1, 1};
  if (rule.ends_with("taken up")) {
    return {RuleKind::taken_up, read_share(trimmed(rule.substr(0, rule.size() - 8)), rule), 1};
  }
  const std::size_t per = rule.find(" per ");
  if (per == std::string_view::npos) fail_unreadable(rule);
  return {RuleKind::per_portions, read_each(trimmed(rule.substr(0, per)), unit, measures, rule),
          read_portions(trimmed(rule.substr(per + 5)), rule)};
}

std::string text_of(const Rule& rule, Unit unit) {
  switch (rule.kind) {
    case RuleKind::in_proportion:
      return "in proportion";
    case RuleKind::fixed:
      return "fixed";
    case RuleKind::whole:
      return "whole";
    case RuleKind::taken_up:
      return exact_text(rule.each * Rational(100)) + " % taken up";
    case RuleKind::per_portions:
      break;
  }
  const bool counts = unit.dimension().without_stages() == dimension::piece();
  std::string each = exact_text(counts ? rule.each : rule.each / unit.ratio());
  if (!counts) each += " " + unit.label();
  const std::string of =
      rule.portions == Rational(1) ? "portion" : exact_text(rule.portions) + " portions";
  return each + " per " + of;
}

RuledAmount amount_by_rule(const Rule& rule, const Rational& written, const Rational& serves,
                           const Rational& portions) {
  const Rational proportional = written * portions / serves;
  switch (rule.kind) {
    case RuleKind::in_proportion:
    case RuleKind::taken_up:
      return {proportional, proportional};
    case RuleKind::fixed:
      return {written, written};
    case RuleKind::whole:
      return {proportional, ceil(proportional)};
    case RuleKind::per_portions:
      break;
  }
  return {rule.each * portions / rule.portions, rule.each * ceil(portions / rule.portions)};
}

}  // namespace scalepan
