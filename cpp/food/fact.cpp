#include "food/fact.hpp"

#include <array>
#include <utility>

#include "exact/error.hpp"

namespace scalepan {

namespace {

struct KindText {
  FactKind kind;
  std::string_view word;
  std::string_view name;
};

constexpr std::array<KindText, 6> kind_texts{{
    {FactKind::density, "density", "density"},
    {FactKind::piece, "piece", "piece weight"},
    {FactKind::edible, "edible", "edible share"},
    {FactKind::cooked, "cooked", "cooked share"},
    {FactKind::drained, "drained", "drained share"},
    {FactKind::word, "word", "measure of a word"},
}};

Dimension staged(Dimension kind, Stage stage) {
  return stage == Stage::none ? kind : kind * Dimension(Base::of(stage));
}

/// What `fact.value` must be for its kind and stages.
Dimension expected_dimension(const Fact& fact) {
  switch (fact.kind) {
    case FactKind::density:
      return staged(dimension::mass(), fact.to) / staged(dimension::volume(), fact.from);
    case FactKind::piece:
      return staged(dimension::mass(), fact.to) / staged(dimension::piece(), fact.from);
    case FactKind::word:
      return dimension::volume() / staged(dimension::piece(), fact.from);
    default:
      return staged(Dimension(), fact.to) / staged(Dimension(), fact.from);
  }
}

[[noreturn]] void fail_value(const Fact& fact, std::string message, std::string hint = {}) {
  fail("fact.value", "fact " + fact.id + ": " + std::move(message), std::move(hint));
}

std::string hint_of(const Fact& fact, Dimension expected) {
  if (!(fact.value.dimension() == expected.without_stages())) return {};
  if (expected.without_stages().is_number()) {
    return "write " + Quantity(fact.value.coherent()).text() + " " + expected.coherent_symbol();
  }
  // One that states no stage could be of the whole piece or of what is left of it.
  return fact.kind == FactKind::piece
             ? "for the weight of the whole piece put AP into from_stage and to_stage"
             : "";
}

}  // namespace

std::string_view name_of(FactKind kind) {
  for (const KindText& text : kind_texts) {
    if (text.kind == kind) return text.name;
  }
  return {};
}

std::string_view word_of(FactKind kind) {
  for (const KindText& text : kind_texts) {
    if (text.kind == kind) return text.word;
  }
  return {};
}

FactKind fact_kind_named(std::string_view word) {
  std::string all;
  for (const KindText& text : kind_texts) {
    if (text.word == word) return text.kind;
    all += (all.empty() ? "" : ", ") + std::string(text.word);
  }
  fail("fact.kind", "no kind of fact is called \"" + excerpt(word) + "\"", "there are: " + all);
}

std::string_view name_of(FactLayer layer) {
  switch (layer) {
    case FactLayer::own:
      return "own";
    case FactLayer::bundled:
      return "bundled";
    case FactLayer::convention:
      return "convention";
    case FactLayer::dataset:
      break;
  }
  return "dataset";
}

void expect_valid(const Fact& fact) {
  const Dimension expected = expected_dimension(fact);
  if (!(fact.value.dimension() == expected)) {
    const std::string symbol = expected.coherent_symbol();
    fail_value(fact,
               (fact.kind == FactKind::edible ? "an " : "a ") + std::string(name_of(fact.kind)) +
                   " is in " + (symbol.empty() ? "no unit" : symbol) + ", but " +
                   fact.value.text() + " is written",
               hint_of(fact, expected));
  }
  if (fact.value.coherent().sign() <= 0) fail_value(fact, "the value must be above zero");
  const bool part_of_whole = fact.kind == FactKind::edible || fact.kind == FactKind::drained;
  if (part_of_whole && fact.value.coherent() > 1) {
    fail_value(fact, "a share of the whole is at most 1, but " + fact.value.text() + " is written");
  }
  if (fact.low && fact.low->coherent().sign() <= 0) fail_value(fact, "low must be above zero");
  if ((fact.low && *fact.low > fact.value) || (fact.high && *fact.high < fact.value)) {
    fail_value(fact, "low, value and high are out of order");
  }
}

}  // namespace scalepan
