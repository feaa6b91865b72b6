#include "bindings/bind.hpp"
#include "bindings/kept.hpp"
#include "bindings/share.hpp"
#include "costing/selling.hpp"
#include "measure/amount.hpp"
#include "measure/cash.hpp"

namespace scalepan::bindings {

namespace {

void bind_cash(py::module_& m) {
  py::class_<CashTotal>(m, "CashTotal")
      .def_readonly("paid", &CashTotal::paid)
      .def_readonly("error", &CashTotal::error)
      .def_property_readonly("step", [](const CashTotal& c) { return c.step.step; })
      .def_property_readonly("source", [](const CashTotal& c) { return c.step.source; });
  keep<CashTotal>(m, "CashTotal");
  m.def(
      "cash_total",
      [](const Quantity& bill, const std::string& rounding, const std::optional<Rational>& step) {
        const Rounding mode = rounding_named(rounding);
        if (!step) return cash_total(bill, mode);
        static_cast<void>(cash_step(bill));  // that it is money of a currency with coins
        return cash_total(bill, mode, {*step, "as given"});
      },
      py::arg("bill"), py::arg("rounding"), py::arg("step"));
}

}  // namespace

void bind_selling(py::module_& m) {
  bind_cash(m);
  py::class_<Selling>(m, "Selling")
      .def_readonly("food_cost", &Selling::food_cost)
      .def_readonly("net", &Selling::net)
      .def_readonly("tax", &Selling::tax)
      .def_readonly("gross", &Selling::gross)
      .def_property_readonly("food_cost_share", &Selling::food_cost_share)
      .def_property_readonly("gross_profit_share", &Selling::gross_profit_share)
      .def_property_readonly("contribution", &Selling::contribution);
  py::class_<PriceFound>(m, "PriceFound")
      .def_readonly("exact", &PriceFound::exact)
      .def_readonly("shelf", &PriceFound::shelf)
      .def_readonly("raised", &PriceFound::raised);
  keep<Selling>(m, "Selling");
  keep<PriceFound>(m, "PriceFound");
  m.def(
      "selling_at",
      [](const Quantity& food_cost, const Quantity& price, const py::object& tax) {
        return selling_at(food_cost, price, share_of(tax));
      },
      py::arg("food_cost"), py::arg("price"), py::arg("tax"));
  m.def(
      "price_for_share",
      [](const Quantity& food_cost, const py::object& share, const py::object& tax,
         const std::optional<Rational>& ending, const Rational& step) {
        return price_for_share(food_cost, {share_of(share), share_of(tax), ending, step});
      },
      py::arg("food_cost"), py::arg("share"), py::arg("tax"), py::arg("ending"), py::arg("step"));
}

}  // namespace scalepan::bindings
