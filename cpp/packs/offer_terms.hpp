// The terms of an offer: several packs at one price, a lower price from a number on, and how many
// packs are sold.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "packs/pack_text.hpp"

namespace scalepan {

/// `3 for 4.50`, `3 for the price of 2`: so many packs together.
struct SeveralTogether {
  Rational packs;
  Rational price;  // of all of them, in whole units of the currency
  std::string text;
};

/// `from 6 at 1.10`: each pack, where so many or more are bought.
struct PriceFrom {
  Rational packs;
  Rational price;  // of one pack
  std::string text;
};

struct OfferTerms {
  std::vector<SeveralTogether> together;
  std::vector<PriceFrom> from;    // by rising number of packs
  Rational least = 1;             // so many packs are bought, or none
  std::optional<Rational> limit;  // the most a customer may buy
};

/// Several terms stand apart by `;`, all of one kind. `price` is of one pack, in whole units of the
/// currency. Throws `price.offer`, with an offset.
void read_offer_terms(std::string_view text, const PackText& pack, const Rational& price,
                      Measures measures, OfferTerms& terms);

/// So many packs; of loose goods an amount that is a whole number of their steps. `what` is the
/// name of the field. Throws `price.number`, with an offset.
[[nodiscard]] Rational read_pack_number(std::string_view text, const PackText& pack,
                                        Measures measures, std::string_view what);

/// Throws `price.number` where more must be bought than may be, and `price.offer` where several
/// are sold together and a least number is asked for, since what then counts is not known.
void expect_terms_meet(const OfferTerms& terms);

}  // namespace scalepan
