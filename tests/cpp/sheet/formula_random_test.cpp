// Random formulas against the same sums by `Quantity`, which checks dimensions as it goes.
#include <functional>
#include <random>

#include "check.hpp"
#include "sheet/cells.hpp"

using namespace scalepan;

namespace {

struct Made {
  std::string text;
  Quantity value;
};

class Maker {
 public:
  explicit Maker(std::uint32_t seed) : random_(seed) {}

  /// Each sum is of two terms alike, so that every formula has a value.
  Made make(int depth) {
    if (depth == 0) return leaf();
    switch (pick(6)) {
      case 0: {
        const Made a = make(depth - 1);
        const Made b = make(depth - 1);
        return {"(" + a.text + ") * (" + b.text + ")", a.value * b.value};
      }
      case 1: {
        const Made a = make(depth - 1);
        const Made b = leaf();
        return {"(" + a.text + ") / (" + b.text + ")", a.value / b.value};
      }
      case 2: {
        const Made a = make(depth - 1);
        const Rational times(static_cast<std::int64_t>(1 + pick(5)));
        return {"(" + a.text + ") + " + exact_text(times) + " * (" + a.text + ")",
                a.value + a.value * times};
      }
      case 3: {
        const Made a = make(depth - 1);
        return {"-(" + a.text + ") - (" + a.text + ")", -a.value - a.value};
      }
      case 4: {
        const Made a = make(depth - 1);
        const Made b = make(depth - 1);
        const std::string same = "(" + a.text + ") / (" + a.text + ")";
        if (a.value.coherent().is_zero()) return a;
        return {"if " + same + " = 1 then " + b.text + " else 2 * (" + b.text + ")", b.value};
      }
      default: {
        const Made a = make(depth - 1);
        return {"max(" + a.text + ", 2 * (" + a.text + "))",
                a.value.coherent().sign() > 0 ? a.value * Rational(2) : a.value};
      }
    }
  }

 private:
  std::uint32_t pick(std::uint32_t below) { return static_cast<std::uint32_t>(random_() % below); }

  Made leaf() {
    static const std::vector<std::string> texts{"3",       "0.25",        "250 g", "1 1/2 kg EP",
                                                "60 %",    "2 portion",   "40 mL", "1.20 GBP/kg",
                                                "5 piece", "44/100 EP/AP"};
    const std::string& text = texts[pick(static_cast<std::uint32_t>(texts.size()))];
    return {text, parse_quantity(text)};
  }

  std::mt19937 random_;
};

}  // namespace

TEST_CASE("sheet/formula: random formulas come to what quantities come to") {
  const Cells none({});
  int compared = 0;
  for (std::uint32_t seed = 0; seed < 3000; ++seed) {
    Made made;
    try {
      made = Maker(seed).make(1 + static_cast<int>(seed % 5));
    } catch (const Error& error) {
      CHECK(error.code() == "unit.power");  // beyond the powers a dimension may have
      continue;
    }
    INFO(made.text);
    const Formula formula = none.compile(made.text);
    CHECK(none.run_numbers(formula) == made.value.coherent());
    CHECK(none.run_values(formula) == Value(made.value.coherent()));
    CHECK(formula.programme->type.dimension() == made.value.dimension());
    ++compared;
  }
  CHECK(compared > 2000);
}
