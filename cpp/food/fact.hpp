// Facts: one sourced figure about a food each.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "measure/quantity.hpp"

namespace scalepan {

enum class FactKind : std::uint8_t {
  density,  // volume to weight, in one state
  piece,    // count of one size to weight
  edible,   // AP weight to EP weight
  cooked,   // EP weight to cooked weight
  drained,  // AP weight to drained weight
  word,     // count of a word (`pinch`) to volume, of any food: a convention
};

/// `density`, `piece weight`, `edible share`, ...
[[nodiscard]] std::string_view name_of(FactKind kind);
/// `density`, `piece`, `edible`, ...: as files have it.
[[nodiscard]] std::string_view word_of(FactKind kind);
/// The kind written `density`, `piece`, `edible`, `cooked`, `drained`.
/// Throws `fact.kind` with the kinds there are.
[[nodiscard]] FactKind fact_kind_named(std::string_view word);

/// Where a fact comes from; earlier layers win.
enum class FactLayer : std::uint8_t { own, bundled, dataset, convention };

[[nodiscard]] std::string_view name_of(FactLayer layer);

/// `value` turns an amount at `from` into one at `to`: g/mL, g EP/(piece AP), EP/AP, cooked/EP,
/// mL/(piece AP) of a word, whose `food` is empty and whose `size` is the word.
/// A density with both stages `none` holds at AP and at EP: the food has nothing to trim.
struct Fact {
  std::string id;
  std::string food;
  FactKind kind = FactKind::density;
  std::string state;  // of a density; of a share: the preparation it holds for (`peeled`)
  std::string size;   // of a piece weight
  Stage from = Stage::none;
  Stage to = Stage::none;
  Quantity value;
  std::optional<Quantity> low;
  std::optional<Quantity> high;
  std::string source;
  FactLayer layer = FactLayer::bundled;
};

/// Throws `fact.value` where the value is not above zero, its dimension does not fit the kind and
/// the stages, or low, value and high are out of order.
void expect_valid(const Fact& fact);

}  // namespace scalepan
