// Works out one cell from the figures of those it reads.
#pragma once

#include "sheet/figures.hpp"
#include "sheet/one_sign.hpp"
#include "sheet/total.hpp"

namespace scalepan {

/// A keeper takes what comes out: `keep_number`, `keep` for values of every kind, `hold` for an
/// error that a cell before it holds, `hold_new` for one that arises here.
template <typename Keeper>
class Evaluator {
 public:
  Evaluator(const Figures& figures, Keeper& keeper) : figures_(figures), keeper_(keeper) {}

  void run_formula(Cell cell, const Programme& programme, const Cell* inputs) {
    if (!programme.numeric || !figures_.all_plain()) [[unlikely]] {
      run_on_figures(cell, programme, inputs);
      return;
    }
    try {
      if (programme.one_sign) {
        keeper_.keep_number(cell, run_one_sign(programme, inputs, figures_.numbers()));
      } else {
        keeper_.keep_number(cell, run(programme, {inputs, figures_.numbers()}, space_));
      }
    } catch (const Error& error) {
      keeper_.hold_new(cell, error);
    }
  }

  void run_total(Cell cell, const Total& sum) {
    try {
      keeper_.keep(cell, sum.value());
    } catch (const Error& error) {
      keeper_.hold_new(cell, error);
    }
  }

 private:
  /// Where some figures are no single numbers, or the programme asks for other things.
  void run_on_figures(Cell cell, const Programme& programme, const Cell* inputs) {
    const auto value_of_input = [this, inputs](std::size_t input) {
      const Cell from = inputs[input];
      if (figures_.condition(from) == Condition::failed) throw InputFailed{from};
      return figures_.value(from);
    };
    try {
      keeper_.keep(cell, run_on_values(programme, value_of_input, space_));
    } catch (const InputFailed& input) {
      const HeldError held = figures_.held(input.cell);
      keeper_.hold(cell, held);
    } catch (const Error& error) {
      keeper_.hold_new(cell, error);
    }
  }

  const Figures& figures_;
  Keeper& keeper_;
  RunSpace space_;
};

/// An error in a formula with its place: the cell, and the column in the formula's text.
[[nodiscard]] Error placed_in_formula(const Error& error, std::string_view cell,
                                      const Programme* programme,
                                      const std::function<std::string(std::size_t)>& name_of_input);

}  // namespace scalepan
