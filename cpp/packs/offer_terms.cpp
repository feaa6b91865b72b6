#include "packs/offer_terms.hpp"

#include <algorithm>

#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"
#include "measure/amount.hpp"
#include "packs/price_number.hpp"

namespace scalepan {

namespace {

constexpr const char* terms_hint = "write 3 for 4.50, 3 for the price of 2, or from 6 at 1.10";

[[noreturn]] void fail_term(std::string_view term) {
  fail("price.offer", "\"" + excerpt(term) + "\" is no offer that is known", terms_hint);
}

std::optional<Rational> whole_number(std::string_view text) {
  const std::string_view written = trimmed(text);
  const bool digits = !written.empty() && written.size() <= 18 &&
                      std::ranges::all_of(written, [](char c) { return is_digit(c); });
  if (!digits) return std::nullopt;
  std::size_t position = 0;
  return read_amount_number(written, position);
}

/// One term of the field, read against the pack it is about.
class TermReader {
 public:
  TermReader(const PackText& pack, const Rational& price, Measures measures, OfferTerms& terms)
      : pack_(pack), price_(price), measures_(measures), terms_(terms) {}

  void read(std::string_view term) {
    const std::string written = lower(term);
    const std::size_t at = written.find(" at ");
    const std::size_t of = written.find(" for ");
    if (written.starts_with("from ") && at != std::string::npos) {
      read_from(term, at);
    } else if (of != std::string::npos) {
      read_together(term, of);
    } else {
      fail_term(term);
    }
  }

 private:
  void read_from(std::string_view term, std::size_t at) {
    const Rational packs = in_part(
        5, [&] { return read_pack_number(term.substr(5, at - 5), pack_, measures_, "the offer"); });
    const Rational price = in_part(at + 4, [&] { return read_price_number(term.substr(at + 4)); });
    expect_no_dearer(term, price, price_ * pack_.priced);
    terms_.from.push_back({packs, price / pack_.priced, std::string(term)});
  }

  void read_together(std::string_view term, std::size_t of) {
    const auto packs = whole_number(term.substr(0, of));
    if (!packs || *packs < Rational(2)) fail_term(term);
    std::string_view rest = trimmed(term.substr(of + 5));
    if (pack_.loose) {
      fail("price.offer",
           "loose goods have no packs to be sold " + exact_text(*packs) + " together",
           "write from 1 kg at 1.10");
    }
    for (const std::string_view words : {"the price of ", "price of "}) {
      if (!lower(rest).starts_with(words)) continue;
      const auto paid = whole_number(rest.substr(words.size()));
      if (!paid || paid->is_zero() || *paid >= *packs) fail_term(term);
      terms_.together.push_back({*packs, *paid * price_, std::string(term)});
      return;
    }
    expect_clear(term, *packs, rest);
    const auto start = static_cast<std::size_t>(rest.data() - term.data());
    const Rational together = in_part(start, [&] { return read_price_number(rest); });
    expect_no_dearer(term, together, *packs * price_);
    terms_.together.push_back({*packs, together, std::string(term)});
  }

  static void expect_clear(std::string_view term, const Rational& packs, std::string_view rest) {
    const auto whole = whole_number(rest);
    if (!whole || whole->is_zero() || *whole >= packs) return;
    const std::string both = exact_text(packs) + " for ";
    fail("price.offer",
         "\"" + excerpt(term) + "\" may mean a price of " + exact_text(*whole) +
             ", or the price of " + exact_text(*whole) +
             (*whole == Rational(1) ? " pack" : " packs"),
         "write " + both + exact_text(*whole) + ".00, or " + both + "the price of " +
             exact_text(*whole));
  }

  /// Such terms would never be taken: the price of one was meant for that of all, or a digit
  /// slipped.
  static void expect_no_dearer(std::string_view term, const Rational& price,
                               const Rational& without) {
    if (price <= without) return;
    fail("price.offer",
         "\"" + excerpt(term) + "\" is dearer than the " + exact_text(without) +
             " that it costs without the offer",
         "from 6 at 1.10 gives the price of one, 3 for 4.50 that of all together");
  }

  const PackText& pack_;
  const Rational& price_;
  Measures measures_;
  OfferTerms& terms_;
};

/// Of loose goods.
Rational steps_of(std::string_view text, const PackText& pack, Measures measures,
                  std::string_view what) {
  const Quantity& step = pack.contents.front().amount;
  const Quantity amount = parse_quantity(trimmed(text), measures);
  const bool alike = amount.dimension().without_stages() == step.dimension().without_stages();
  const Rational steps = alike ? amount.coherent() / step.coherent() : Rational(0);
  if (steps.sign() > 0 && steps.is_integer()) return steps;
  fail("price.number",
       std::string(what) + " is of " + amount.text() + ", but " + pack.text +
           " is sold in steps of " + step.text(),
       "give an amount that is a whole number of steps");
}

}  // namespace

Rational read_pack_number(std::string_view text, const PackText& pack, Measures measures,
                          std::string_view what) {
  if (pack.loose) return steps_of(text, pack, measures, what);
  const auto packs = whole_number(text);
  if (packs && packs->sign() > 0) return *packs;
  fail("price.number",
       "\"" + excerpt(trimmed(text)) + "\" is no number of packs for " + std::string(what),
       "write a whole number above zero");
}

void read_offer_terms(std::string_view text, const PackText& pack, const Rational& price,
                      Measures measures, OfferTerms& terms) {
  TermReader reader(pack, price, measures, terms);
  std::size_t start = 0;
  while (start <= text.size()) {
    const std::size_t end = std::min(text.find(';', start), text.size());
    const std::string_view term = trimmed(text.substr(start, end - start));
    const std::size_t offset =
        term.empty() ? start : static_cast<std::size_t>(term.data() - text.data());
    in_part(offset, [&] { reader.read(term); });
    start = end + 1;
  }
  std::ranges::sort(terms.from, {}, &PriceFrom::packs);
  if (terms.together.empty() || terms.from.empty()) return;
  fail("price.offer",
       "what several packs sold together count for in a price from a number is not known",
       "keep one of the two");
}

void expect_terms_meet(const OfferTerms& terms) {
  if (terms.limit && *terms.limit < terms.least) {
    fail("price.number", "at least " + exact_text(terms.least) +
                             " packs must be bought, but at most " + exact_text(*terms.limit) +
                             " may be");
  }
  if (terms.together.empty() || terms.least == Rational(1)) return;
  fail("price.offer",
       "whether packs sold together count for the least number of " + exact_text(terms.least) +
           " is not known",
       "keep one of the two");
}

}  // namespace scalepan
