// Price rows that cannot be read: the whole error, at its place.
#include <string>

#include "packs/shelf.hpp"

namespace scalepan {
namespace {

struct Refused {
  std::string code;
  std::string told;  // place: message (hint)

  friend bool operator==(const Refused&, const Refused&) = default;
  friend std::ostream& operator<<(std::ostream& out, const Refused& refused) {
    return out << refused.code << ": " << refused.told;
  }
};

Refused refusal(const Shelf& shelf) {
  try {
    static_cast<void>(offer_of(shelf));
  } catch (const Error& error) {
    return {error.code(), error.what()};
  }
  return {"nothing", ""};
}

Refused pack_refusal(const std::string& pack, const std::string& sold_as = "AP") {
  return refusal({"leeks", sold_as, pack, "1"});
}

TEST_CASE("offer errors: a field that is not there is named") {
  CHECK(refusal({"", "AP", "1 kg", "1"}) ==
        Refused{"price.missing", "prices.csv:2:1: the row has no item"});
  CHECK(refusal({"leeks", " ", "1 kg", "1"}) ==
        Refused{"price.missing",
                "prices.csv:2:21: the row has no sold_as (sold_as is one of AP, EP, "
                "cooked, drained, served)"});
  CHECK(refusal({"leeks", "AP", "", "1"}) ==
        Refused{"price.missing",
                "prices.csv:2:41: the row has no pack (write a pack as 1 kg, 6, or 400 g tin (240 "
                "g drained))"});
  CHECK(refusal({"leeks", "AP", "1 kg", ""}) ==
        Refused{"price.missing",
                "prices.csv:2:61: the row has no price (write what a pack costs, or 0 where "
                "nothing is paid)"});
  CHECK(refusal({"leeks", "AP", "1 kg", "1", ""}) ==
        Refused{"price.missing",
                "prices.csv:2:101: the row has no keeps (keeps is yes, no, or a number "
                "of days)"});
}

TEST_CASE("offer errors: stages") {
  CHECK(
      refusal({"leeks", "raw", "1 kg", "1"}) ==
      Refused{"price.stage",
              "prices.csv:2:21: \"raw\" is no stage to sell at (sold_as is one of AP, EP, cooked, "
              "drained, served)"});
  CHECK(pack_refusal("400 g tin (240 g dried)") ==
        Refused{"price.stage", "prices.csv:2:57: \"dried\" is no stage (write (240 g drained))"});
  CHECK(pack_refusal("400 g tin (240 g drained)", "EP") ==
        Refused{"price.stage",
                "prices.csv:2:51: the pack is sold as EP, but its bracket says drained (sold_as is "
                "AP, or the stage in the bracket)"});
  CHECK(
      pack_refusal("400 g tin (240 g AP)") ==
      Refused{"price.stage",
              "prices.csv:2:51: the pack is sold as AP, but its bracket says AP (sold_as is AP, or "
              "the stage in the bracket)"});
}

TEST_CASE("offer errors: packs") {
  const std::string write = " (write a pack as 1 kg, 6, or 400 g tin (240 g drained))";
  CHECK(pack_refusal("large bag") ==
        Refused{"price.pack", "prices.csv:2:41: no amount is written in \"large bag\"" + write});
  CHECK(pack_refusal("400 g tin (drained)") ==
        Refused{"price.pack", "prices.csv:2:52: no amount is written in \"drained\"" + write});
  CHECK(pack_refusal("1 kg 3 bags") ==
        Refused{"price.pack", "prices.csv:2:45: \"3 bags\" is no word for a container" + write});
  CHECK(pack_refusal("2-3 kg") ==
        Refused{"price.pack", "prices.csv:2:41: a pack cannot hold a range"});
  CHECK(pack_refusal("0 g") ==
        Refused{"price.pack", "prices.csv:2:41: a pack must hold more than nothing"});
  CHECK(pack_refusal("-1 kg") ==
        Refused{"price.pack", "prices.csv:2:41: a pack must hold more than nothing"});
  CHECK(pack_refusal("400 g tin (240 g drained") ==
        Refused{"price.pack", "prices.csv:2:51: a bracket is not closed"});
  CHECK(pack_refusal("400 g tin (240 g drained) blue") ==
        Refused{"price.pack", "prices.csv:2:66: text follows the bracket of a pack"});
}

TEST_CASE("offer errors: the amount reader's own errors come with their column") {
  CHECK(pack_refusal("1,5 kg").told.starts_with("prices.csv:2:42: a comma stands inside a number"));
  CHECK(pack_refusal("400 g tin (1/0 g drained)")
            .told.starts_with("prices.csv:2:54: the denominator of a fraction is zero"));
  CHECK(pack_refusal("1 pint").told.starts_with("prices.csv:2:43: which pt is meant"));
}

TEST_CASE("offer errors: prices") {
  CHECK(refusal({"leeks", "AP", "1 kg", "-2.10"}) ==
        Refused{"price.negative", "prices.csv:2:61: the price -2.10 is below zero"});
  for (const std::string text : {"2,10", "2.10 GBP", "free", "1/2/3"}) {
    CHECK(refusal({"leeks", "AP", "1 kg", text}) ==
          Refused{"price.unreadable",
                  "prices.csv:2:61: \"" + text +
                      "\" is no price (write a number such as 1.05, and the currency's code in its "
                      "own column)"});
  }
  CHECK(refusal({"leeks", "AP", "1 kg", "2.10", "yes", "pounds"}) ==
        Refused{"price.currency",
                "prices.csv:2:81: \"pounds\" is no currency of ISO 4217 (write its three capital "
                "letters, such as EUR)"});
}

TEST_CASE("offer errors: keeping") {
  for (const char* text : {"maybe", "0", "-1", "3 weeks", "yess", "99999999999", "1.5 days"}) {
    CHECK(refusal({"leeks", "AP", "1 kg", "1", text}) ==
          Refused{"price.keeps", std::string("prices.csv:2:101: \"") + text +
                                     "\" does not say whether the rest keeps (keeps is yes, no, or "
                                     "a number of days)"});
  }
}

TEST_CASE("offer errors: dates") {
  for (const char* text : {"24.11.2026", "2026-13-01", "2026-00-01", "2026-11-32", "2026-11-00",
                           "2026-11-4", "2026-11-24T00:00", "20261124", "abcd-11-24"}) {
    CHECK(refusal({"leeks", "AP", "1 kg", "1", "yes", "", "", text}) ==
          Refused{"price.date", std::string("prices.csv:2:141: \"") + text +
                                    "\" is no date (write it as 2026-11-24)"});
  }
}

}  // namespace
}  // namespace scalepan
