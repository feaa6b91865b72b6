#include "measure/nearest.hpp"

#include <array>

#include "check.hpp"

namespace scalepan {
namespace {

using Names = std::vector<std::string>;

// Kitten/sitting and Saturday/Sunday are the textbook pairs of Wagner and Fischer's distance; a
// swap of neighbours counts one, and "ca" to "abc" is 3 by optimal string alignment (it is 2 by
// the unrestricted distance of Damerau and Levenshtein).
TEST_CASE("edit distance: the textbook pairs") {
  CHECK(edit_distance("kitten", "sitting") == 3);
  CHECK(edit_distance("saturday", "sunday") == 3);
  CHECK(edit_distance("flaw", "lawn") == 2);
  CHECK(edit_distance("intention", "execution") == 5);
  CHECK(edit_distance("ca", "abc") == 3);
  CHECK(edit_distance("tbps", "tbsp") == 1);
  CHECK(edit_distance("", "leek") == 4);
  CHECK(edit_distance("leek", "") == 4);
  CHECK(edit_distance("leek", "leek") == 0);
  CHECK(edit_distance("", "") == 0);
}

TEST_CASE("edit distance: it is symmetric and keeps the triangle on these words") {
  constexpr std::array<std::string_view, 8> words{"leek", "leeks", "eek", "kale",
                                                  "lake", "salt",  "",    "slat"};
  for (const std::string_view a : words) {
    for (const std::string_view b : words) {
      CHECK(edit_distance(a, b) == edit_distance(b, a));
      CHECK((edit_distance(a, b) == 0) == (a == b));
      for (const std::string_view c : words) {
        CHECK(edit_distance(a, c) <= edit_distance(a, b) + edit_distance(b, c));
      }
    }
  }
}

TEST_CASE("nearest names: nearest first, equals in the order known, no doubles") {
  constexpr std::array<std::string_view, 6> known{"leeks",   "leek", "peek",
                                                  "lentils", "leek", "beet"};
  CHECK(nearest_names("leek", known) == Names{"leek", "leeks", "peek"});
  CHECK(nearest_names("leek", known, 1) == Names{"leek"});
  CHECK(nearest_names("leekss", known) == Names{"leeks", "leek"});
  CHECK(nearest_names("lentlis", known) == Names{"lentils"});
}

TEST_CASE("nearest names: short names allow one slip, middle ones two, long ones three") {
  constexpr std::array<std::string_view, 4> known{"kgs", "salt", "aubergine", "g"};
  CHECK(nearest_names("kg", known) == Names{"kgs"});
  CHECK(nearest_names("sa", known).empty());
  CHECK(nearest_names("slat", known) == Names{"salt"});
  CHECK(nearest_names("sxxt", known) == Names{"salt"});
  CHECK(nearest_names("xxxt", known).empty());
  CHECK(nearest_names("obergene", known) == Names{"aubergine"});
  CHECK(nearest_names("obergxxx", known).empty());
}

TEST_CASE("nearest names: a text too long to be a name has none") {
  constexpr std::array<std::string_view, 1> known{"leek"};
  CHECK(nearest_names(std::string(61, 'e'), known).empty());
  const std::string sixty(60, 'e');
  const std::array<std::string_view, 1> same{sixty};
  CHECK(nearest_names(sixty, same) == Names{sixty});
}

TEST_CASE("nearest hint: the names with commas, or nothing") {
  CHECK(nearest_hint({}).empty());
  CHECK(nearest_hint({"tbsp"}) == "nearest: tbsp");
  CHECK(nearest_hint({"tbsp", "tsp"}) == "nearest: tbsp, tsp");
}

}  // namespace
}  // namespace scalepan
