// The short texts of a recipe beside its lines: rules, tapers, shares, and what is said of a batch.
#include "exact/text.hpp"
#include "fuzz.hpp"
#include "recipe/bakers_percent.hpp"
#include "recipe/batch_text.hpp"
#include "recipe/rule.hpp"
#include "recipe/share_phrase.hpp"
#include "recipe/taper.hpp"

using namespace scalepan;

namespace {

/// A rule that reads gives an amount at every size up to its taper's end, and reads back.
void try_rule(std::string_view text, std::string_view unit_name) {
  const Unit unit = Unit::named(unit_name);
  const Rule rule = parse_rule(text, unit, Measures::us);
  fuzz::expect(rule.taken_up.sign() >= 0 && rule.taken_up <= Rational(1));
  fuzz::expect(parse_rule(text_of(rule, unit), unit, Measures::us) == rule);
  const Size written{4, 4, 1, 1};
  fuzz::expect(amount_by_rule(rule, 3, written).amount.sign() >= 0);
}

void try_taper(std::string_view text) {
  const Ramp taper = parse_taper(text);
  fuzz::expect(taper.at(1) == Rational(1));
  fuzz::expect(parse_taper(text_of(taper)) == taper);
}

void try_share(std::string_view text) {
  const auto phrase = read_share_phrase(text, DecimalMark::point);
  if (phrase) fuzz::expect(text.substr(phrase->name_at).starts_with(phrase->name));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  fuzz::reads_or_refuses([&] { try_rule(text, "piece"); });
  fuzz::reads_or_refuses([&] { try_rule(text, "kg"); });
  fuzz::reads_or_refuses([&] { try_taper(text); });
  fuzz::reads_or_refuses([&] { try_share(text); });
  fuzz::reads_or_refuses([&] {
    const Rational kept = parse_loss(text);
    fuzz::expect(kept.sign() > 0 && kept <= Rational(1));
  });
  fuzz::reads_or_refuses(
      [&] { fuzz::expect(parse_capacity(text, Measures::us).coherent().sign() > 0); });
  fuzz::reads_or_refuses([&] {
    const auto trays = parse_trays(text);
    fuzz::expect(!trays || trays->is_integer());
  });
  fuzz::reads_or_refuses(
      [&] { fuzz::expect(parse_flour(text, Measures::us).coherent().sign() > 0); });
  return 0;
}
