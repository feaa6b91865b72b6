#include "bindings/bind_choices.hpp"

#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "bindings/archive_shared.hpp"
#include "bindings/kept.hpp"
#include "costing/make_or_buy.hpp"
#include "costing/pack_prices.hpp"
#include "costing/swaps.hpp"
#include "costing/targets.hpp"
#include "measure/told.hpp"
#include "packs/break_even.hpp"

namespace scalepan::bindings {

namespace {

/// A result with the unit its costs are in.
template <class Found>
struct InMoney {
  Found found;
  Unit money;

  [[nodiscard]] Quantity of(const Rational& amount) const { return {amount, money}; }
};

using SwapFound = InMoney<Swap>;
using MakeOrBuyFound = InMoney<MakeOrBuy>;

/// Till and borne of one of the result's costs.
template <class Found>
void add_costs(py::class_<Found>& result, const std::string& name,
               Costs (*costs)(const Found& found)) {
  result.def_property_readonly((name + "till").c_str(),
                               [costs](const Found& f) { return f.of(costs(f).till); });
  result.def_property_readonly((name + "borne").c_str(),
                               [costs](const Found& f) { return f.of(costs(f).borne()); });
}

void bind_pack_price(py::module_& m) {
  py::class_<PackPrice>(m, "PackPrice")
      .def_readonly("pack", &PackPrice::pack)
      .def_readonly("shop", &PackPrice::shop)
      .def_readonly("price", &PackPrice::price)
      .def_readonly("taken", &PackPrice::taken)
      .def_readonly("only", &PackPrice::only)
      .def_readonly("worth", &PackPrice::worth)
      .def_readonly("taken_at_worth", &PackPrice::taken_at_worth)
      .def_readonly("by_size", &PackPrice::by_size)
      .def("__repr__", [](const PackPrice& p) {
        return "<PackPrice " + p.pack + " at " + tell_money(p.price).text + ">";
      });
  using Even = PricedBreakEven;
  py::class_<Even>(m, "BreakEven")
      .def_readonly("only", &Even::only)
      .def_readonly("price", &Even::price)
      .def_property_readonly("packs", [](const Even& e) { return packs_of(e.packs); })
      .def_readonly("taken", &Even::taken)
      .def_readonly("by_size", &Even::by_size)
      .def("__repr__", [](const Even& e) {
        return "<BreakEven " + (e.price ? "at " + e.price->text() : std::string("at no price")) +
               ">";
      });
  m.def(
      "break_even",
      [](const Quantity& need, const std::pair<std::string, Quantity>& pack,
         const std::vector<std::tuple<std::string, Quantity, Quantity>>& others) {
        std::vector<PricedPurchase> purchases;
        const Unit money = others.empty() ? Unit::named("XXX") : std::get<2>(others.front()).unit();
        purchases.push_back({pack.first, pack.second, Quantity(Rational(0), money), 0});
        for (const auto& [text, held, price] : others) {
          purchases.push_back({text, held, price, purchases.size()});
        }
        return break_even(need, purchases, 0);
      },
      py::arg("need"), py::arg("pack"), py::arg("others"));
}

void bind_swap(py::module_& m) {
  using S = SwapFound;
  py::class_<S> swap(m, "Swap");
  swap.def_property_readonly("line", [](const S& s) { return s.found.line; })
      .def_property_readonly("lines",
                             [](const S& s) {
                               std::vector<std::string> texts;
                               for (const Line& line : s.found.lines) texts.push_back(line.text);
                               return texts;
                             })
      .def_property_readonly("unpriced", [](const S& s) { return s.found.unpriced; })
      .def_property_readonly("allergens_gained",
                             [](const S& s) { return s.found.allergens_gained; })
      .def_property_readonly("allergens_lost", [](const S& s) { return s.found.allergens_lost; })
      .def_property_readonly("allergens_unknown",
                             [](const S& s) { return s.found.allergens_unknown; })
      .def("__repr__", [](const S& s) {
        return "<Swap of " + s.found.line + ": saves " + tell_money(s.of(s.found.saved.till)).text +
               " at the till>";
      });
  add_costs<S>(swap, "", [](const S& s) { return s.found.costs; });
  add_costs<S>(swap, "saved_", [](const S& s) { return s.found.saved; });
}

void bind_make_or_buy(py::module_& m) {
  using R = MakeOrBuyFound;
  py::class_<R> result(m, "MakeOrBuy");
  result.def_property_readonly("base", [](const R& r) { return r.found.base; })
      .def_property_readonly("item", [](const R& r) { return r.found.item; })
      .def_property_readonly("amount", [](const R& r) { return r.found.amount; })
      .def_property_readonly("packs", [](const R& r) { return packs_of(r.found.packs); })
      .def_property_readonly("leftover", [](const R& r) { return r.found.leftover; })
      .def_property_readonly("lines", [](const R& r) { return r.found.lines; })
      .def_property_readonly("unpriced_made", [](const R& r) { return r.found.unpriced_made; })
      .def_property_readonly("unpriced_bought", [](const R& r) { return r.found.unpriced_bought; })
      .def("__repr__",
           [](const R& r) { return "<MakeOrBuy " + r.found.base + " or " + r.found.item + ">"; });
  add_costs<R>(result, "made_", [](const R& r) { return r.found.made; });
  add_costs<R>(result, "bought_", [](const R& r) { return r.found.bought; });
  add_costs<R>(result, "dish_made_", [](const R& r) { return r.found.dish_made; });
  add_costs<R>(result, "dish_bought_", [](const R& r) { return r.found.dish_bought; });
}

using LinesGiven = std::variant<std::string, std::vector<std::string>>;

std::vector<SwapFound> swaps_of(const Costing& costing,
                                const std::vector<std::pair<std::string, LinesGiven>>& given,
                                const std::string& by) {
  costing.expect_unchanged("swaps");
  std::vector<SwapAsked> asked;
  for (const auto& [line, lines] : given) {
    SwapAsked swap{line, {}};
    if (const auto* one = std::get_if<std::string>(&lines)) {
      swap.lines.push_back({*one, {}});
    } else {
      for (const std::string& text : std::get<std::vector<std::string>>(lines)) {
        swap.lines.push_back({text, {}});
      }
    }
    asked.push_back(std::move(swap));
  }
  std::vector<SwapFound> found;
  for (Swap& swap : swaps(costing, asked, by)) {
    found.push_back({std::move(swap), costing.plan().money()});
  }
  return found;
}

}  // namespace

void bind_choices(py::module_& m) {
  py::class_<LeastSpend>(m, "LeastSpend")
      .def_readonly("portions", &LeastSpend::portions)
      .def_readonly("till", &LeastSpend::till)
      .def_readonly("most", &LeastSpend::most)
      .def_readonly("till_next", &LeastSpend::till_next);
  bind_pack_price(m);
  bind_swap(m);
  bind_make_or_buy(m);
  keep<LeastSpend>(m, "LeastSpend");
  keep<PackPrice>(m, "PackPrice");
  keep<PricedBreakEven>(m, "BreakEven");
  keep<SwapFound>(m, "Swap");
  keep<MakeOrBuyFound>(m, "MakeOrBuy");
}

void add_choices(CostingClass& costing) {
  costing
      .def(
          "least_spend",
          [](const Costing& c, const Rational& portions) {
            c.expect_unchanged("least spends");
            return least_spend(c, portions);
          },
          py::arg("portions"))
      .def(
          "pack_prices",
          [](const Costing& c, const std::string& item) {
            c.expect_unchanged("pack prices");
            return pack_prices(c.provisions(), item);
          },
          py::arg("item"))
      .def("swaps", &swaps_of, py::arg("asked"), py::arg("by") = "till")
      .def(
          "make_or_buy",
          [](const Costing& c, const std::string& base, const std::string& item) {
            c.expect_unchanged("making and buying");
            return MakeOrBuyFound{make_or_buy(c, base, item), c.plan().money()};
          },
          py::arg("base"), py::arg("item"));
}

}  // namespace scalepan::bindings
