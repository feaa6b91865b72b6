#include <algorithm>
#include <array>
#include <optional>

#include "fuzz.hpp"
#include "measure/quantity.hpp"
#include "sheet/compile.hpp"
#include "sheet/value.hpp"

using namespace scalepan;

namespace {

/// A few cells of unlike kinds, `a` to `e`, and the total of a column `t`.
class FewCells final : public Names {
 public:
  FewCells() {
    types_[0] = quantity_type(Unit::named("g"));
    types_[1] = quantity_type(Unit::named("kg").at(Stage::edible));
    types_[2] = quantity_type(Unit());
    types_[3] = flag_type();
    types_[4] = text_type();
    types_[5] = quantity_type(Unit::named("GBP"));
    values_ = {Rational(250), Rational(5000), Rational(0), Rational(1), Rational(0), Rational(7)};
  }
  std::optional<Found> find(std::string_view name) const override {
    if (name.size() != 1 || name[0] < 'a' || name[0] > 'e') return std::nullopt;
    const auto cell = static_cast<std::uint32_t>(name[0] - 'a');
    return Found{cell, types_[cell]};
  }
  std::optional<Found> find_total(std::string_view column) const override {
    if (column != "t") return std::nullopt;
    return Found{total, types_[total]};
  }
  std::vector<std::string> nearest(std::string_view /*name*/) const override { return {"a"}; }

  [[nodiscard]] const Rational* values() const { return values_.data(); }
  [[nodiscard]] Value value(std::uint32_t cell, bool spread) const {
    if (types_[cell].kind == ValueKind::text) return std::make_shared<Text>("leek");
    if (!spread || types_[cell].kind != ValueKind::quantity) return values_[cell];
    return Interval{values_[cell] - Rational(1), values_[cell] + Rational(1)};
  }
  static std::string name_of(std::uint32_t cell) {
    return std::string(1, cell == total ? 't' : static_cast<char>('a' + cell));
  }

 private:
  static constexpr std::uint32_t total = 5;

  std::array<ValueType, 6> types_;
  std::array<Rational, 6> values_;
};

bool same_programme(const Programme& a, const Programme& b) {
  const auto same = [](const Instruction& one, const Instruction& other) {
    return one.operation == other.operation && one.operand == other.operand &&
           one.count == other.count && one.argument == other.argument && one.offset == other.offset;
  };
  return a.type == b.type && a.input_types == b.input_types && a.constants == b.constants &&
         a.shape == b.shape && a.occurrences == b.occurrences && a.stack == b.stack &&
         std::ranges::equal(a.code, b.code, same);
}

/// Nothing where it fails, as it may.
std::optional<Value> value_of(const FewCells& cells, const Formula& formula, bool spread) {
  std::optional<Value> value;
  RunSpace space;
  fuzz::reads_or_refuses([&] {
    value = run_on_values(
        *formula.programme,
        [&](std::size_t input) { return cells.value(formula.inputs[input], spread); }, space);
  });
  return value;
}

/// Both machines give the same, and what single numbers come to lies within what their spreads do.
void expect_agreement(const FewCells& cells, const Formula& formula) {
  const std::optional<Value> value = value_of(cells, formula, false);
  const std::optional<Value> around = value_of(cells, formula, true);
  if (!formula.programme->numeric) return;
  std::optional<Rational> number;
  RunSpace space;
  fuzz::reads_or_refuses(
      [&] { number = run(*formula.programme, {formula.inputs.data(), cells.values()}, space); });
  fuzz::expect(number.has_value() == value.has_value());
  if (!number) return;
  fuzz::expect(*value == Value(*number));
  if (formula.programme->type.kind == ValueKind::flag) {
    fuzz::expect(number->is_zero() || *number == Rational(1));
  }
  if (!around) return;
  if (const auto* interval = std::get_if<Interval>(&*around)) {
    fuzz::expect(interval->low <= *number && (!interval->high || *number <= *interval->high));
  } else {
    fuzz::expect(*around == *value);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const FewCells cells;
  static const auto functions = std::make_shared<const FunctionTable>();
  static Compiler kept(functions);
  const std::string_view text = fuzz::text_of(data, size);
  fuzz::reads_or_refuses([&] {
    const Formula formula = Compiler(functions).compile(text, cells);
    const Formula first = kept.compile(text, cells);
    const Formula again = kept.compile(text, cells);
    fuzz::expect(first.programme == again.programme && first.inputs == again.inputs);
    fuzz::expect(first.inputs == formula.inputs);
    fuzz::expect(same_programme(*formula.programme, *first.programme));
    const auto name_of_input = [&](std::size_t input) {
      return FewCells::name_of(formula.inputs[input]);
    };
    fuzz::expect(text_of(*formula.programme, name_of_input) == text);
    expect_agreement(cells, formula);
  });
  return 0;
}
