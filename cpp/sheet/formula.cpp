#include "sheet/formula.hpp"

#include "sheet/machine.hpp"
#include "sheet/numbers.hpp"

namespace scalepan {

namespace {

constexpr char name_mark = '\1';

class NumberDomain {
 public:
  using Value = Rational;

  NumberDomain(const Programme& programme, const NumberInputs& inputs)
      : programme_(programme), inputs_(inputs) {}

  [[nodiscard]] const Rational& operand(const Instruction& instruction) const {
    if (instruction.operand == Operand::constant) return programme_.constants[instruction.argument];
    return inputs_.values[inputs_.cells[instruction.argument]];
  }
  [[nodiscard]] static Rational one(const Instruction& instruction, const Rational& a) {
    return one_number(instruction, a);
  }
  [[nodiscard]] static Rational two(const Instruction& instruction, const Rational& a,
                                    const Rational& b) {
    return two_numbers(instruction, a, b);
  }
  [[nodiscard]] static bool holds(const Instruction& /*unused*/, const Rational& flag) {
    return !flag.is_zero();
  }
  /// Numeric programmes call nothing.
  [[nodiscard]] static Rational called(const Instruction& /*unused*/, const Rational* /*unused*/) {
    return {};
  }

 private:
  const Programme& programme_;
  const NumberInputs& inputs_;
};

}  // namespace

Rational run(const Programme& programme, const NumberInputs& inputs, RunSpace& space) {
  const NumberDomain domain(programme, inputs);
  return Machine<NumberDomain>(programme, domain, space.numbers).run();
}

std::string text_of(const Programme& programme,
                    const std::function<std::string(std::size_t)>& name_of_input) {
  std::string text;
  std::size_t name = 0;
  for (const char c : programme.shape) {
    if (c == name_mark) {
      text += name_of_input(programme.occurrences[name++]);
    } else {
      text += c;
    }
  }
  return text;
}

std::size_t text_offset(const Programme& programme,
                        const std::function<std::string(std::size_t)>& name_of_input,
                        std::size_t offset) {
  std::size_t longer = 0;
  std::size_t name = 0;
  for (const char c : std::string_view(programme.shape).substr(0, offset)) {
    if (c == name_mark) longer += name_of_input(programme.occurrences[name++]).size() - 1;
  }
  return offset + longer;
}

}  // namespace scalepan
