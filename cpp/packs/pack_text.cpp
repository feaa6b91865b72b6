#include "packs/pack_text.hpp"

#include <optional>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"
#include "measure/amount.hpp"
#include "measure/count_nouns.hpp"
#include "measure/unit_table.hpp"

namespace scalepan {

namespace {

Quantity staged_amount(const Amount& amount, Stage stage) {
  const Unit unit = amount.unit.value_or(Unit::named("piece"));
  return Quantity::of_coherent(amount.high, unit.at(stage));
}

/// An amount above zero at `position`, moved past.
Amount read_content(std::string_view text, std::size_t& position, Measures measures) {
  while (position < text.size() && text[position] == ' ') ++position;
  const std::size_t start = position;
  const auto amount = read_amount(text, position, measures, UnitStyle::kitchen);
  if (!amount) {
    fail_at(start, "price.pack", "no amount is written in \"" + excerpt(text.substr(start)) + "\"",
            std::string(pack_hint));
  }
  const Dimension kind = amount->unit.value_or(Unit::named("piece")).dimension();
  if (!(kind == dimension::mass() || kind == dimension::volume() || kind == dimension::piece())) {
    fail_at(start, "price.pack", "a pack is a weight, a volume or a count, not a " + kind.name());
  }
  if (amount->is_range()) fail_at(start, "price.pack", "a pack cannot hold a range");
  if (amount->high.sign() <= 0) fail_at(start, "price.pack", "a pack must hold more than nothing");
  return *amount;
}

/// The `(240 g drained)` of a pack.
std::optional<Quantity> read_bracket(std::string_view text, std::size_t open, Measures measures) {
  const std::size_t close = text.find(')', open);
  if (close == std::string_view::npos) {
    fail_at(open, "price.pack", "a bracket is not closed");
  }
  if (!trimmed(text.substr(close + 1)).empty()) {
    fail_at(close + 1, "price.pack", "text follows the bracket of a pack");
  }
  std::size_t position = open + 1;
  const Amount amount = read_content(text.substr(0, close), position, measures);
  const std::string_view word = trimmed(text.substr(position, close - position));
  const auto stage = stage_named(word);
  if (!stage) {
    fail_at(position, "price.stage", "\"" + excerpt(word) + "\" is no stage",
            "write (240 g drained)");
  }
  return staged_amount(amount, *stage);
}

/// The word behind the amount of a pack, in the singular: `tins` gives `tin`.
std::string singular_of(std::string_view word) {
  const std::string written = lower(word);
  if (const auto noun = container_noun(written)) return std::string(*noun);
  if (const auto noun = piece_noun(written)) return std::string(*noun);
  return written;
}

/// `6 eggs` of the item eggs counts the item itself.
bool names_item(std::string_view word, std::string_view item) {
  const std::string written = lower(word);
  const std::string name = lower(item);
  return written == name || written + "s" == name || written == name + "s";
}

std::string read_container(std::string_view text, std::size_t position, std::string_view word,
                           bool counted) {
  const std::string noun = singular_of(word);
  const bool known = container_noun(noun) || piece_noun(noun);
  const bool digits = word.find_first_of("0123456789") != std::string_view::npos;
  if (digits || (counted && word.find(' ') != std::string_view::npos)) {
    fail_at(position, "price.pack", "\"" + excerpt(word) + "\" is no word for a container",
            std::string(pack_hint));
  }
  if (counted && !known && misspells_unit(word)) {
    fail_unknown_unit(word, static_cast<std::size_t>(word.data() - text.data()));
  }
  return noun;
}

void expect_fits(const PackContent& whole, const Quantity& inside, std::size_t offset) {
  const bool same_kind =
      whole.amount.dimension().without_stages() == inside.dimension().without_stages();
  if (same_kind && inside.coherent() > whole.amount.coherent()) {
    fail_at(offset, "price.pack",
            "the pack holds " + whole.amount.text() + ", but its bracket says " + inside.text());
  }
}

struct Bracket {
  Stage sold_as;
  std::size_t offset;
};

/// The contents of a pack whose bracket says what it holds at another stage.
std::vector<PackContent> with_inside(const PackContent& whole, const Amount& amount,
                                     const Quantity& inside, const Bracket& bracket) {
  if (inside.stage() == bracket.sold_as && bracket.sold_as != Stage::as_purchased) {
    return {{inside, ""}, {staged_amount(amount, Stage::as_purchased), whole.noun}};
  }
  if (inside.stage() == Stage::as_purchased || bracket.sold_as != Stage::as_purchased) {
    fail_at(bracket.offset, "price.stage",
            "the pack is sold as " + std::string(symbol_of(bracket.sold_as)) +
                ", but its bracket says " + std::string(symbol_of(inside.stage())),
            "sold_as is AP, or the stage in the bracket");
  }
  return {whole, {inside, ""}};
}

/// `loose in 50 g` behind the amount that the price is of.
bool is_loose(std::string_view word) {
  const std::string written = lower(word);
  return written == "loose" || written.starts_with("loose ");
}

PackText read_loose(std::string_view text, std::size_t position, const Amount& priced,
                    const PackReading& reading) {
  const std::size_t in = lower(text).find(" in ", position);
  if (in == std::string_view::npos) {
    fail_at(position, "price.pack", "it is not said in what steps loose goods are weighed out",
            "write 1 kg loose in 50 g");
  }
  const std::size_t between = position + std::string_view("loose").size();
  const std::string_view unread = trimmed(text.substr(between, in - between));
  if (!unread.empty()) {
    fail_at(between, "price.pack",
            "\"" + excerpt(unread) + "\" between loose and its steps is not understood",
            "write 1 kg loose in 50 g, and an amount that must be bought in the column least");
  }
  std::size_t after = in + 4;
  if (lower(text.substr(after)).starts_with("steps of ")) after += 9;
  const std::size_t start = after;
  const Amount step = read_content(text, after, reading.measures);
  if (!trimmed(text.substr(after)).empty()) {
    fail_at(after, "price.pack", "text follows the step of loose goods");
  }
  PackText pack;
  pack.contents = {{staged_amount(step, reading.sold_as), ""}};
  const Quantity of = staged_amount(priced, reading.sold_as);
  if (!(of.dimension() == pack.contents.front().amount.dimension())) {
    fail_at(start, "price.pack",
            "the price is of " + of.text() + ", but the steps are of " +
                pack.contents.front().amount.text());
  }
  pack.loose = true;
  pack.priced = of.coherent() / pack.contents.front().amount.coherent();
  pack.text = std::string(trimmed(text.substr(start))) + " loose";
  return pack;
}

}  // namespace

PackText read_pack(std::string_view text, const PackReading& reading) {
  std::size_t position = 0;
  const Amount amount = read_content(text, position, reading.measures);
  const std::size_t open = text.find('(', position);
  std::string_view word = trimmed(text.substr(position, open - position));
  if (word.starts_with(',')) word = trimmed(word.substr(1));
  if (is_loose(word)) {
    return read_loose(text, static_cast<std::size_t>(word.data() - text.data()), amount, reading);
  }
  const bool counted = !amount.unit;
  const std::string container = word.empty() || names_item(word, reading.item)
                                    ? ""
                                    : read_container(text, position, word, counted);
  const PackContent whole{staged_amount(amount, reading.sold_as), counted ? container : ""};
  PackText pack;
  pack.text = std::string(trimmed(text));
  pack.contents = {whole};
  if (open != std::string_view::npos) {
    // The bracket speaks of one tin, also where the pack holds six.
    const Quantity inside = *read_bracket(text, open, reading.measures) * amount.times;
    expect_fits(whole, inside, open);
    pack.contents = with_inside(whole, amount, inside, {reading.sold_as, open});
  }
  if (!counted && !container.empty()) {
    const Unit piece = Unit::named("piece").at(Stage::as_purchased);
    pack.contents.push_back({Quantity(amount.times, piece), container});
  }
  return pack;
}

}  // namespace scalepan
