#include "recipe/rule.hpp"

#include <optional>
#include <utility>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"
#include "measure/amount.hpp"
#include "measure/told.hpp"
#include "recipe/number_words.hpp"
#include "recipe/taper.hpp"

namespace scalepan {

namespace {

constexpr std::string_view known_rules =
    "in proportion, fixed, whole, one per portion, one per 4 portions, 25 g per portion, one per "
    "load, tapered (2, 1.5), (4, 2), to taste, 15 % taken up, "
    "taken out";

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
  if (share.sign() < 0 || share > Rational(1)) {
    fail_at(0, "rule.share", "\"" + excerpt(text) + "\" is no share of the amount",
            "write a percentage from 0 to 100");
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

/// Takes `, 15 % taken up` or `, taken out` off the end; the share, or 1.
Rational take_taken_up(std::string_view& rule) {
  constexpr std::string_view up = "taken up";
  constexpr std::string_view out = "taken out";
  const std::string_view whole = rule;
  if (!rule.ends_with(up) && !rule.ends_with(out)) return 1;
  const std::size_t comma = rule.rfind(',');
  const bool alone = comma == std::string_view::npos;
  const std::string_view share = trimmed(alone ? rule : rule.substr(comma + 1));
  rule = alone ? "in proportion" : trimmed(rule.substr(0, comma));
  if (share == out) return 0;
  if (!share.ends_with(up)) fail_unreadable(whole);
  return read_share(trimmed(share.substr(0, share.size() - up.size())), whole);
}

Rule read_tapered(std::string_view text) {
  Rule rule{.kind = RuleKind::tapered};
  constexpr std::string_view as = "as ";
  if (text.starts_with(as)) {
    rule.taper_name = trimmed(text.substr(as.size()));
    rule.taper = taper_named(rule.taper_name);
  } else {
    rule.taper = parse_taper(text);
  }
  return rule;
}

Rule read_scaling(std::string_view rule, Unit unit, Measures measures) {
  if (rule == "in proportion") return {};
  if (rule == "fixed") return {.kind = RuleKind::fixed};
  if (rule == "whole") return {.kind = RuleKind::whole};
  if (rule == "to taste") return {.kind = RuleKind::to_taste};
  if (rule == "per load") return {.kind = RuleKind::per_load, .each = 0};
  constexpr std::string_view tapered = "tapered ";
  if (rule.starts_with(tapered)) return read_tapered(trimmed(rule.substr(tapered.size())));
  const std::size_t per = rule.find(" per ");
  if (per == std::string_view::npos) fail_unreadable(rule);
  const Rational each = read_each(trimmed(rule.substr(0, per)), unit, measures, rule);
  const std::string_view of = trimmed(rule.substr(per + 5));
  if (of == "load") return {.kind = RuleKind::per_load, .each = each};
  return {.kind = RuleKind::per_portions, .each = each, .portions = read_portions(of, rule)};
}

std::string text_of_each(const Rule& rule, Unit unit) {
  const bool counts = unit.dimension().without_stages() == dimension::piece();
  return counts ? exact_text(rule.each) : exact_text(rule.each / unit.ratio()) + " " + unit.label();
}

std::string text_of_scaling(const Rule& rule, Unit unit) {
  switch (rule.kind) {
    case RuleKind::in_proportion:
      return "in proportion";
    case RuleKind::fixed:
      return "fixed";
    case RuleKind::whole:
      return "whole";
    case RuleKind::to_taste:
      return "to taste";
    case RuleKind::per_load:
      return rule.each.is_zero() ? "per load" : text_of_each(rule, unit) + " per load";
    case RuleKind::tapered:
      return "tapered " +
             (rule.taper_name.empty() ? text_of(*rule.taper) : "as " + rule.taper_name);
    case RuleKind::per_portions:
      break;
  }
  const std::string of =
      rule.portions == Rational(1) ? "portion" : exact_text(rule.portions) + " portions";
  return text_of_each(rule, unit) + " per " + of;
}

}  // namespace

Rule parse_rule(std::string_view text, Unit unit, Measures measures) {
  std::string_view scaling = trimmed(text);
  const Rational taken_up = take_taken_up(scaling);
  Rule rule = read_scaling(scaling, unit, measures);
  rule.taken_up = taken_up;
  return rule;
}

std::string text_of(const Rule& rule, Unit unit) {
  if (rule.taken_up == Rational(1)) return text_of_scaling(rule, unit);
  const std::string share = rule.taken_up.is_zero()
                                ? "taken out"
                                : exact_text(rule.taken_up * Rational(100)) + " % taken up";
  const bool alone = rule.kind == RuleKind::in_proportion;
  return alone ? share : text_of_scaling(rule, unit) + ", " + share;
}

/// The multiple of the written amount at a factor.
static Rational tapered(const Ramp& taper, const Rational& factor) {
  const auto end = taper.end();
  if (!end || factor <= *end) return taper.at(factor);
  fail("rule.taper_end",
       "the taper ends at " + exact_text(*end) + " times the written amounts; " +
           tell(Quantity(factor)).text + " times is asked for",
       "give it a further point, or say how it goes on: then 1/2");
}

RuledAmount amount_by_rule(const Rule& rule, const Rational& written, const Size& size) {
  const Rational proportional = written * size.factor;
  switch (rule.kind) {
    case RuleKind::in_proportion:
    case RuleKind::to_taste:
      return {proportional, proportional};
    case RuleKind::fixed:
      return {written, written};
    case RuleKind::whole:
      return {proportional, ceil(proportional)};
    case RuleKind::per_load: {
      const Rational amount = (rule.each.is_zero() ? written : rule.each) * size.loads;
      return {amount, amount};
    }
    case RuleKind::tapered: {
      const Rational amount = written * tapered(*rule.taper, size.factor);
      return {amount, amount};
    }
    case RuleKind::per_portions:
      break;
  }
  return {rule.each * size.portions / rule.portions,
          rule.each * ceil(size.portions / rule.portions)};
}

void add_growth(Growth& growth, const Rule& rule, const Rational& written, const Rational& weight,
                const Growing& growing) {
  switch (rule.kind) {
    case RuleKind::in_proportion:
    case RuleKind::to_taste:
      return growth.add_slope(written * weight);
    case RuleKind::fixed:
      return growth.add_constant(written * weight);
    case RuleKind::whole:
      return growth.add_steps(weight, written);
    case RuleKind::per_load:
      return;
    case RuleKind::tapered:
      return growth.add_ramp(written * weight, *rule.taper);
    case RuleKind::per_portions:
      break;
  }
  if (growing.portions) {
    growth.add_constant(rule.each * weight * ceil(*growing.portions / rule.portions));
  } else {
    growth.add_steps(rule.each * weight, growing.serves / rule.portions);
  }
}

}  // namespace scalepan
