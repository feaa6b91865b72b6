// Formulas of one shape share a programme, and it says what each of them was written as.
#include <random>

#include "check.hpp"
#include "exact/error.hpp"
#include "sheet/cells.hpp"

using namespace scalepan;

namespace {

Cells new_kitchen() {
  return {{"a", "1 kg"},    {"b", "2 kg"}, {"long.name_of_c", "3 kg"},
          {"d", "4 kg EP"}, {"e", "5 L"},  {"flag", "yes"}};
}

const Cells& kitchen() {
  static const Cells cells = new_kitchen();
  return cells;
}

std::shared_ptr<const Programme> programme_of(std::string_view text) {
  return kitchen().compile(text).programme;
}

std::string written(const Formula& formula) {
  return text_of(*formula.programme, kitchen().naming(formula));
}

}  // namespace

TEST_CASE("sheet/shapes: names alone do not make another programme") {
  const Formula formula = kitchen().compile("2 * a + b");
  const Formula other = kitchen().compile("2 * long.name_of_c + a");
  CHECK(formula.programme == other.programme);
  CHECK(formula.inputs == std::vector<std::uint32_t>{0, 1});
  CHECK(other.inputs == std::vector<std::uint32_t>{2, 0});
  CHECK(written(formula) == "2 * a + b");
  CHECK(written(other) == "2 * long.name_of_c + a");
}

TEST_CASE("sheet/shapes: all else does") {
  const auto known = programme_of("2 * a + b");
  for (const std::string_view other :
       {"2 * a + a", "2 * d + d", "3 * a + b", "2*a + b", "2 * a - b", "2 * a + b ", "2 * e + e"}) {
    INFO(other);
    CHECK(programme_of(other) != known);
  }
}

TEST_CASE("sheet/shapes: a programme goes with its last formula") {
  std::weak_ptr<const Programme> held;
  {
    const Formula formula = kitchen().compile("a + b + 17 g");
    held = formula.programme;
    CHECK(!held.expired());
  }
  CHECK(held.expired());
  CHECK(kitchen().told("a + b + 17 g") == "3.017 kg");
}

TEST_CASE("sheet/shapes: many shapes are all found again") {
  const Cells cells{{"a", "1 kg"}};
  std::vector<Formula> formulas;
  const auto text = [](int i) { return "a * " + std::to_string(i); };
  for (int i = 0; i < 5000; ++i) formulas.push_back(cells.compile(text(i)));
  for (int i = 0; i < 5000; ++i) {
    CHECK(cells.compile(text(i)).programme == formulas[static_cast<std::size_t>(i)].programme);
  }
}

TEST_CASE("sheet/shapes: the offset of an error is in the formula's own text") {
  const Cells cells{{"n", "1"}, {"a_longer_name", "2"}, {"none", "0"}};
  CHECK(cells.told("n + n / n") == "2");
  CHECK(thrown_by([&] { return cells.told("a_longer_name + n / none"); }) ==
        Thrown{"number.division_by_zero", "division by zero", "", 18});
}

// What finds the names and what reads the formula must see the same words in any soup of them.
TEST_CASE("sheet/shapes: soups read the same by a fresh reader and give their text back") {
  static const std::vector<std::string> words{"a",         "b",      "long.name_of_c",
                                              "flag",      "2",      "1/2",
                                              "3/4 kg",    "1 1/2",  "g",
                                              "kg",        "/",      "/kg",
                                              "/(kg",      ")",      "(",
                                              "+",         "-",      "*",
                                              "^",         "2",      "%",
                                              "min(",      "sum(",   ",",
                                              "\"a + b\"", "if",     "then",
                                              "else",      "and",    "not",
                                              "1.5",       "<",      "=",
                                              " ",         "  ",     "\t",
                                              "EP",        "/a",     "[",
                                              "]",         "\u00D7", "yes",
                                              "ifa",       "a.2"};
  std::mt19937 random(7);
  int read = 0;
  for (int trial = 0; trial < 60000; ++trial) {
    std::string text;
    const std::size_t length = 1 + random() % 9;
    for (std::size_t i = 0; i < length; ++i) {
      text += words[random() % words.size()];
      if (random() % 2 == 0) text += ' ';
    }
    INFO(text);
    const auto compiled = [&](const Cells& by) {
      return thrown_by([&] {
        const Formula formula = by.compile(text);
        if (text_of(*formula.programme, by.naming(formula)) != text) fail("x", "another text");
        ++read;
        return 0;
      });
    };
    const Thrown kept = compiled(kitchen());
    CHECK(kept == compiled(new_kitchen()));
    CHECK(kept.code != "x");
  }
  CHECK(read > 500);
}
