#include "packs/ways_to_buy.hpp"

#include <algorithm>

#include "exact/error.hpp"
#include "exact/number_text.hpp"

namespace scalepan {

namespace {

/// A limit beyond this, beside other terms, is taken for an oversight.
constexpr std::int64_t most_alternatives = 300;

class RowWays {
 public:
  RowWays(const Offer& offer, const Rational& size, std::size_t row, Taxes taxes)
      : offer_(offer), size_(size), row_(row), taxes_(taxes) {}

  std::vector<WayToBuy> list() {
    const OfferTerms& terms = offer_.terms;
    const bool plain = terms.together.empty() && terms.from.empty();
    if (terms.limit && !plain) return one_of_each_number();
    add(1, offer_.price.value(), terms.least, terms.limit, {});
    for (const SeveralTogether& several : terms.together) {
      add(several.packs, several.price, 1, std::nullopt, several.text);
    }
    for (const PriceFrom& from : terms.from) {
      add(1, from.price, std::max(from.packs, terms.least), std::nullopt, from.text);
    }
    return std::move(ways_);
  }

 private:
  void add(const Rational& packs, const Rational& price, const Rational& least,
           const std::optional<Rational>& limit, const std::string& text) {
    WayToBuy& way = ways_.emplace_back();
    way.text = text;
    way.purchase.size = size_ * packs;
    way.purchase.price = money(price);
    way.purchase.row = row_;
    way.purchase.packs = packs;
    way.purchase.least = least;
    way.purchase.limit = limit;
  }

  [[nodiscard]] Rational money(const Rational& price) const {
    return with_taxes(Quantity(price, offer_.price.unit()).coherent(), offer_, taxes_);
  }

  struct Priced {
    Rational price;
    std::string text;
  };

  /// The least price of exactly 1, 2, 3 ... packs.
  [[nodiscard]] std::vector<Priced> least_prices(std::size_t most) const {
    std::vector<Priced> best(most + 1);
    for (std::size_t packs = 1; packs <= most; ++packs) {
      best[packs] = {best[packs - 1].price + offer_.price.value(), best[packs - 1].text};
      for (const SeveralTogether& several : offer_.terms.together) {
        const Rational rest = Rational(static_cast<std::int64_t>(packs)) - several.packs;
        if (rest.sign() < 0) continue;
        const Priced& before = best[static_cast<std::size_t>(rest.word_numerator())];
        if (before.price + several.price >= best[packs].price) continue;
        best[packs] = {before.price + several.price, several.text};
      }
    }
    return best;
  }

  void lower_from(std::vector<Priced>& best) const {
    for (const PriceFrom& from : offer_.terms.from) {
      for (std::size_t packs = 1; packs < best.size(); ++packs) {
        const Rational number(static_cast<std::int64_t>(packs));
        if (number < from.packs || number * from.price >= best[packs].price) continue;
        best[packs] = {number * from.price, from.text};
      }
    }
  }

  std::vector<WayToBuy> one_of_each_number() {
    const OfferTerms& terms = offer_.terms;
    if (*terms.limit > Rational(most_alternatives)) {
      fail("price.limit",
           "a limit of " + exact_text(*terms.limit) +
               " packs beside other terms is more than the " + std::to_string(most_alternatives) +
               " that are looked at",
           "leave the limit out where it is never reached", offer_.place);
    }
    const auto most = static_cast<std::size_t>(terms.limit->word_numerator());
    std::vector<Priced> best = least_prices(most);
    lower_from(best);
    for (std::size_t packs = 1; packs <= most; ++packs) {
      const Rational number(static_cast<std::int64_t>(packs));
      if (number < terms.least) continue;
      add(number, best[packs].price, 1, std::nullopt, best[packs].text);
      ways_.back().purchase.one_of = row_;
    }
    return std::move(ways_);
  }

  const Offer& offer_;
  const Rational& size_;
  std::size_t row_;
  Taxes taxes_;
  std::vector<WayToBuy> ways_;
};

}  // namespace

Rational with_taxes(const Rational& price, const Offer& offer, Taxes taxes) {
  if (!offer.tax) return price;
  const Rational factor = offer.tax->rate + Rational(1);
  if (taxes == Taxes::with) return offer.tax->included ? price : price * factor;
  return offer.tax->included ? price / factor : price;
}

std::vector<WayToBuy> ways_to_buy(const Offer& offer, const Rational& size, std::size_t row,
                                  Taxes taxes) {
  return RowWays(offer, size, row, taxes).list();
}

}  // namespace scalepan
