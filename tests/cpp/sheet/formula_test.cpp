#include <chrono>

#include "catch.hpp"
#include "exact/error.hpp"
#include "sheet/cells.hpp"

using namespace scalepan;

namespace {

const Cells& kitchen() {
  static const Cells cells{{"leeks.need", "5 kg EP"}, {"leeks.edible", "44/100 EP/AP"},
                           {"portions", "40"},        {"serves", "4"},
                           {"amount", "250 g"},       {"drain", "30 g"},
                           {"price", "1.20 GBP/kg"},  {"pan", "6 L"},
                           {"large", "yes"},          {"small", "no"},
                           {"nothing", "0 g"}};
  return cells;
}

std::string told(std::string_view text) { return kitchen().told(text); }

}  // namespace

TEST_CASE("sheet/formula: signs bind as in mathematics") {
  CHECK(told("1 + 2 * 3") == "7");
  CHECK(told("(1 + 2) * 3") == "9");
  CHECK(told("8 / 4 / 2") == "1");
  CHECK(told("8 - 4 - 2") == "2");
  CHECK(told("-2^2") == "-4");
  CHECK(told("(-2)^2") == "4");
  CHECK(told("2 * -3") == "-6");
  CHECK(told("2^-2") == "0.25");
  CHECK(told("1 - 1/2") == "0.5");
  CHECK(told("1-1/2") == "0.5");
  CHECK(told("12 / 3/4") == "1");
  CHECK(told("7 \u00D7 6 \u00F7 2 \u2212 1") == "20");
}

TEST_CASE("sheet/formula: units stand behind their numbers") {
  CHECK(told("250 g + 1/2 kg") == "0.75 kg");
  CHECK(told("1 1/2 kg") == "1.5 kg");
  CHECK(told("1.20 GBP/kg * 500 g") == "0.6 GBP");
  CHECK(told("250 g / drain") == "8 1/3");
  CHECK(told("250 g*2") == "500 g");
  CHECK(told("60 % * amount") == "150 g");
  CHECK(told("44/100 EP/AP * (5 kg AP)") == "2200 g EP");
  CHECK(told("amount + 0") == "250 g");
}

TEST_CASE("sheet/formula: names are cells, and stages are part of what they are") {
  CHECK(told("leeks.need / leeks.edible") == "11363 7/11 g AP");
  CHECK(told("amount * portions / serves") == "2500 g");
  CHECK(told("price * amount") == "0.3 GBP");
  const Formula formula = kitchen().compile("amount + amount * portions");
  CHECK(formula.inputs.size() == 2);
}

TEST_CASE("sheet/formula: choices, comparisons and yes or no") {
  CHECK(told("if portions > 30 then 2 * amount else amount") == "500 g");
  CHECK(told("if portions < 30 then 2 * amount else if large then drain else 0") == "30 g");
  CHECK(told("1 + if small then 1 else 2 + 3") == "6");
  CHECK(told("portions >= 40 and not small") == "yes");
  CHECK(told("not portions <= 40 or small") == "no");
  CHECK(told("amount = 1/4 kg") == "yes");
  CHECK(told("amount <> 1/4 kg") == "no");
  CHECK(told("portions \u2264 40 and portions \u2265 40 and not portions \u2260 40") == "yes");
  CHECK(told("large = not small") == "yes");
}

TEST_CASE("sheet/formula: the part of a choice that is not taken does not run") {
  CHECK(told("if nothing > 0 then amount / nothing else 7") == "7");
}

TEST_CASE("sheet/formula: functions are those of mathematics") {
  CHECK(told("min(amount, 1/5 kg, drain)") == "0.03 kg");
  CHECK(told("max(2, min(3, 4), -1)") == "3");
  CHECK(told("abs(drain - amount)") == "220 g");
  CHECK(told("up_to_multiple(amount + 1 g, 50 g)") == "300 g");
  CHECK(told("down_to_multiple(-1/2, 1)") == "-1");
  CHECK(told("nearest_multiple(2.5, 1)") == "3");
  CHECK(told("up_to_multiple(amount, 0.1 kg) / 100 g") == "3");
}

// Each of these would take seconds if any part of the reader looked at it twice for each of its
// words.
TEST_CASE("sheet/formula: the longest formulas take time in proportion") {
  Cells cells{{"x", "1"}};
  for (int i = 0; i < 20'000; ++i) cells.add("x" + std::to_string(i), "1");
  const auto grown = [](auto next) {
    std::string text = "x";
    for (std::size_t i = 0;; ++i) {
      const std::string more = next(i);
      if (text.size() + more.size() > longest_formula) return text;
      text += more;
    }
  };
  const std::vector<std::string> texts{
      grown([](std::size_t) { return std::string("+1"); }),
      grown([](std::size_t i) { return "+x" + std::to_string(i % 20'000); }),
      grown([](std::size_t i) { return "*" + std::to_string(i) + "/" + std::to_string(i + 1); }),
      grown([](std::size_t) { return std::string(" "); }),
      grown([](std::size_t) { return std::string("-1/2 g/(kg"); }),
      grown([](std::size_t) { return std::string("1/2 [x"); }),
      grown([](std::size_t) { return std::string(" g/kg"); }),
      grown([](std::size_t) { return std::string("+1 "); }) + std::string(2, ' '),
      grown([](std::size_t i) { return i == 0 ? " = \"" : std::string("\"\""); }),
      "-" + std::string(longest_formula - 1, '1')};
  const auto start = std::chrono::steady_clock::now();
  for (const std::string& text : texts) {
    try {
      static_cast<void>(cells.compile(text));
    } catch (const Error& error) {
      CHECK(!error.code().empty());
    }
  }
  CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(5));
}

TEST_CASE("sheet/formula: a formula as deep and as long as allowed takes time in proportion") {
  std::string deep = "1";
  for (std::size_t i = 0; i < deepest_formula; ++i) deep = "(" + deep + ")";
  CHECK(told(deep) == "1");
  std::string wide = "1";
  while (wide.size() + 2 <= longest_formula) wide += "+1";
  CHECK(told(wide) == std::to_string((wide.size() + 1) / 2));
}
