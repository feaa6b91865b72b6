#include "recipe/share_phrase.hpp"

#include <array>
#include <random>

#include "check.hpp"

namespace scalepan {
namespace {

std::string told(std::string_view text, DecimalMark mark = DecimalMark::point) {
  const auto phrase = read_share_phrase(text, mark);
  if (!phrase) return "none";
  constexpr std::array<std::string_view, 3> kinds{"share", "rest", "portions"};
  const auto kind = kinds.at(static_cast<std::size_t>(phrase->kind));
  CHECK(text.substr(phrase->name_at).starts_with(phrase->name));
  return std::string(kind) + " " + fraction_text(phrase->amount) + " of " + phrase->name;
}

TEST_CASE("share phrases: a share, the rest, a number of portions") {
  CHECK(told("3/5 of the white sauce") == "share 3/5 of white sauce");
  CHECK(told("3/5 the white sauce") == "share 3/5 of white sauce");
  CHECK(told("60 % of white sauce") == "share 3/5 of white sauce");
  CHECK(told("60% white sauce") == "share 3/5 of white sauce");
  CHECK(told("0.6 of the white sauce") == "share 3/5 of white sauce");
  CHECK(told("0,6 of the white sauce", DecimalMark::comma) == "share 3/5 of white sauce");
  CHECK(told("half of the sauce") == "share 1/2 of sauce");
  CHECK(told("half the sauce") == "share 1/2 of sauce");
  CHECK(told("all of the sauce") == "share 1 of sauce");
  CHECK(told("All the sauce") == "share 1 of sauce");
  CHECK(told("rest of the sauce") == "rest 1 of sauce");
  CHECK(told("The rest of the sauce") == "rest 1 of sauce");
  CHECK(told("  the   rest  sauce ") == "rest 1 of sauce");
  CHECK(told("4 portions of fennel bake") == "portions 4 of fennel bake");
  CHECK(told("1 portion fennel bake") == "portions 1 of fennel bake");
  CHECK(told("1/2 of the sauce, warm") == "share 1/2 of sauce, warm");
}

TEST_CASE("share phrases: what is none") {
  for (const char* text : {"", "300 g sauce", "2 sauces", "3/5", "3/5 of", "3/5 of the", "rest",
                           "the rest", "all", "sauce", "60 %", "4 portions", "4 portions of the"}) {
    CHECK(told(text) == "none");
  }
}

using Parts = std::vector<std::optional<Rational>>;
constexpr std::nullopt_t rest = std::nullopt;

TEST_CASE("shares settle: the rest is what the others leave") {
  CHECK(settle_shares({Rational(3, 5), rest}, "sauce") ==
        std::vector<Rational>{Rational(3, 5), Rational(2, 5)});
  CHECK(settle_shares({rest}, "sauce") == std::vector<Rational>{1});
  CHECK(settle_shares({Rational(1, 3), Rational(1, 3)}, "sauce") ==
        std::vector<Rational>{Rational(1, 3), Rational(1, 3)});
  CHECK(settle_shares({Rational(1)}, "sauce") == std::vector<Rational>{1});
  CHECK(settle_shares({}, "sauce").empty());
}

TEST_CASE("shares settle: shares and a rest come to the whole, always") {
  std::mt19937_64 random(0x5a4e);
  std::uniform_int_distribution<int> parts(1, 6);
  std::uniform_int_distribution<int> weight(1, 97);
  for (int i = 0; i < 1000; ++i) {
    std::vector<int> weights(static_cast<std::size_t>(parts(random)));
    int sum = weight(random);
    for (int& w : weights) sum += w = weight(random);
    Parts shares;
    for (const int w : weights) shares.emplace_back(Rational(w, sum));
    shares.insert(shares.begin() + i % static_cast<int>(shares.size() + 1), rest);
    Rational whole;
    for (const Rational& share : settle_shares(shares, "sauce")) {
      CHECK(share.sign() > 0);
      whole += share;
    }
    CHECK(whole == Rational(1));
  }
}

Thrown refusal(const Parts& parts) {
  return thrown_by([&] { return settle_shares(parts, "white_sauce").size(); });
}

TEST_CASE("shares settle: more than the whole, two rests, nothing left") {
  CHECK(refusal({Rational(3, 5), Rational(1, 2)}) ==
        Thrown{"share.over",
               "the uses of white_sauce come to 3/5 + 1/2 = 1 1/10, more than the whole",
               "make the shares smaller, or let one take the rest", 0});
  CHECK(refusal({Rational(6, 5)}) ==
        Thrown{"share.over", "the uses of white_sauce come to 1 1/5, more than the whole",
               "make the shares smaller, or let one take the rest", 0});
  CHECK(refusal({Rational(3, 5), rest, Rational(1, 2)}).code == "share.over");
  CHECK(refusal({rest, Rational(1, 2), rest}) ==
        Thrown{"share.two_rests", "two of the uses of white_sauce take the rest of it",
               "give one of them a share", 0});
  CHECK(refusal({Rational(3, 5), Rational(2, 5), rest}) ==
        Thrown{"share.no_rest",
               "nothing of white_sauce is left for the rest: the other uses come to 3/5 + 2/5 = 1",
               "", 0});
  CHECK(refusal({Rational(1), rest}) ==
        Thrown{"share.no_rest",
               "nothing of white_sauce is left for the rest: the other uses come to 1", "", 0});
}

}  // namespace
}  // namespace scalepan
