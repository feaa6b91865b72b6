#include <array>

#include "fuzz.hpp"
#include "measure/quantity.hpp"
#include "sheet/compile.hpp"

using namespace scalepan;

namespace {

/// A few cells of unlike kinds.
class FewCells final : public Names {
 public:
  FewCells() {
    types_[0] = quantity_type(Unit::named("g"));
    types_[1] = quantity_type(Unit::named("kg").at(Stage::edible));
    types_[2] = quantity_type(Unit());
    types_[3] = flag_type();
    values_ = {Rational(250), Rational(5000), Rational(0), Rational(1)};
  }
  std::optional<Found> find(std::string_view name) const override {
    if (name.size() != 1 || name[0] < 'a' || name[0] > 'd') return std::nullopt;
    const auto cell = static_cast<std::uint32_t>(name[0] - 'a');
    return Found{cell, types_[cell]};
  }
  std::vector<std::string> nearest(std::string_view /*name*/) const override { return {"a"}; }
  [[nodiscard]] const Rational* values() const { return values_.data(); }

 private:
  std::array<ValueType, 4> types_;
  std::array<Rational, 4> values_;
};

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const FewCells cells;
  fuzz::reads_or_refuses([&] {
    const Formula formula = compile(fuzz::text_of(data, size), cells);
    std::vector<Rational> stack(formula.stack);
    const Rational value = run(formula, {cells.values(), nullptr, stack});
    fuzz::expect(stack.size() == formula.stack);
    if (formula.type.kind == ValueKind::flag) {
      fuzz::expect(value.is_zero() || value == Rational(1));
    }
  });
  return 0;
}
