// What a cost is asked with, from Python.
#pragma once

#include <memory>
#include <string>

#include "bindings/pybind.hpp"
#include "costing/plan.hpp"
#include "exact/error.hpp"
#include "packs/fields.hpp"

namespace scalepan::bindings {

/// Throws `cost.taxes`.
inline Taxes taxes_named(const std::string& taxes) {
  if (taxes == "with") return Taxes::with;
  if (taxes == "without") return Taxes::without;
  fail("cost.taxes", "prices are not counted \"" + excerpt(taxes) + "\" taxes",
       "there are: with, without");
}

inline CostOptions cost_options(bool strict, const std::string& taxes,
                                const std::shared_ptr<Stock>& stock, const std::string& day) {
  return {strict, taxes_named(taxes), stock, date_text(day)};
}

}  // namespace scalepan::bindings
