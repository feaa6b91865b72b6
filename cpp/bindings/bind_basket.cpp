#include <memory>

#include "bindings/archive_shared.hpp"
#include "bindings/at_least.hpp"
#include "bindings/bind.hpp"
#include "bindings/caution_list.hpp"
#include "bindings/cost_options.hpp"
#include "bindings/kept.hpp"
#include "bindings/placed.hpp"
#include "bindings/shopping_of.hpp"
#include "costing/basket.hpp"
#include "costing/basket_why.hpp"
#include "costing/leftovers.hpp"
#include "measure/told.hpp"

namespace scalepan::bindings {

namespace {

/// A dish with the unit its costs are in.
struct DishCosts {
  std::shared_ptr<const Basket> basket;
  std::size_t index = 0;

  [[nodiscard]] const BasketDish& dish() const { return basket->dishes()[index]; }
  [[nodiscard]] Quantity money(const Rational& amount) const { return {amount, basket->money()}; }
  [[nodiscard]] Quantity cost(std::string_view which) const {
    return money(cost_named(dish().costs, which));
  }
  /// Ids as the basket has them.
  [[nodiscard]] std::vector<std::string> unpriced() const {
    std::vector<std::string> ids;
    for (const std::string& line : dish().apart->unpriced()) ids.push_back(dish().id + "." + line);
    return ids;
  }
  [[nodiscard]] Quantity per_portion(std::string_view which) const {
    return cost(which) / Quantity(dish().recipe().portions(), Unit::named("portion"));
  }
};

void bind_dish(py::module_& m) {
  using D = DishCosts;
  py::class_<D>(m, "BasketDish")
      .def_property_readonly("name", [](const D& d) { return d.dish().name; })
      .def_property_readonly("id", [](const D& d) { return d.dish().id; })
      .def_property_readonly("recipe",
                             [](const D& d) { return std::make_shared<Recipe>(d.dish().recipe()); })
      .def_property_readonly("unpriced", [](const D& d) { return d.unpriced(); })
      .def_property_readonly("portions", [](const D& d) { return d.dish().recipe().portions(); })
      .def_property_readonly("till", [](const D& d) { return d.cost("till"); })
      .def_property_readonly("used", [](const D& d) { return d.cost("used"); })
      .def_property_readonly("thrown", [](const D& d) { return d.cost("thrown"); })
      .def_property_readonly("borne", [](const D& d) { return d.cost("borne"); })
      .def_property_readonly("closing", [](const D& d) { return d.money(d.dish().costs.closing); })
      .def_property_readonly("opening", [](const D& d) { return d.money(d.dish().costs.opening); })
      .def("per_portion", &D::per_portion, py::arg("which") = "borne")
      .def_property_readonly("apart",
                             [](const D& d) { return std::make_shared<Costing>(*d.dish().apart); })
      .def_property_readonly(
          "saving",
          [](const D& d) { return d.money(d.dish().apart->costs().till - d.dish().unaided.till); })
      .def_property_readonly("saving_borne",
                             [](const D& d) {
                               const BasketDish& dish = d.dish();
                               return d.money(dish.apart->costs().borne() - dish.unaided.borne());
                             })
      .def("__repr__", [](const D& d) {
        return "<BasketDish " + d.dish().name + ": borne " + tell_money(d.cost("borne")).text + ">";
      });
}

void bind_row(py::module_& m) {
  py::class_<DishNeed>(m, "DishNeed")
      .def_readonly("dish", &DishNeed::dish)
      .def_readonly("need", &DishNeed::need)
      .def("__repr__",
           [](const DishNeed& d) { return "<DishNeed " + d.dish + ": " + d.need.text() + ">"; });
  py::class_<BasketRow, ShoppingRow>(m, "BasketRow").def_readonly("dishes", &BasketRow::dishes);
}

struct DishState {
  std::string name;
  std::shared_ptr<const Recipe> recipe;
};

struct BasketState {
  std::vector<DishState> dishes;
  std::shared_ptr<const PriceBook> prices;
  CostOptions options;
};

BasketState state_of_basket(const Basket& basket) {
  const Plan& plan = basket.provisions().plan();
  BasketState state{{}, plan.prices()->shared_book(), plan.options()};
  for (const BasketDish& dish : basket.dishes()) {
    state.dishes.push_back({dish.name, std::make_shared<const Recipe>(dish.recipe())});
  }
  return state;
}

std::unique_ptr<Basket> basket_of(const BasketState& state) {
  std::vector<Dish> dishes;
  for (const auto& [name, recipe] : state.dishes) dishes.push_back({{name, {}}, *recipe});
  return std::make_unique<Basket>(dishes, state.prices, state.options);
}

DishCosts state_of_dish(const DishCosts& dish) { return dish; }

std::unique_ptr<DishCosts> dish_of(DishCosts state) {
  if (state.basket == nullptr || state.index >= state.basket->dishes().size()) fail_damaged();
  return std::make_unique<DishCosts>(std::move(state));
}

std::vector<DishCosts> dishes_of(const std::shared_ptr<Basket>& basket) {
  std::vector<DishCosts> dishes;
  for (std::size_t i = 0; i < basket->dishes().size(); ++i) dishes.push_back({basket, i});
  return dishes;
}

Quantity money(const Basket& basket, const Rational& amount) { return {amount, basket.money()}; }

}  // namespace

void bind_basket(py::module_& m) {
  bind_dish(m);
  bind_row(m);
  using B = Basket;
  py::class_<B, std::shared_ptr<B>>(m, "Basket")
      .def_property_readonly("till", [](const B& b) { return money(b, b.costs().till); })
      .def_property_readonly("used", [](const B& b) { return money(b, b.costs().used); })
      .def_property_readonly("thrown", [](const B& b) { return money(b, b.costs().thrown); })
      .def_property_readonly("borne", [](const B& b) { return money(b, b.costs().borne()); })
      .def_property_readonly("closing", [](const B& b) { return money(b, b.costs().closing); })
      .def_property_readonly("opening", [](const B& b) { return money(b, b.costs().opening); })
      .def_property_readonly("deposit", [](const B& b) { return b.provisions().deposit(); })
      .def_property_readonly("left", [](const B& b) { return leftovers(b.provisions()); })
      .def_property_readonly("apart_till", [](const B& b) { return money(b, b.apart().till); })
      .def_property_readonly("apart_borne", [](const B& b) { return money(b, b.apart().borne()); })
      .def_property_readonly("saving",
                             [](const B& b) { return money(b, b.apart().till - b.unaided().till); })
      .def_property_readonly(
          "saving_borne",
          [](const B& b) { return money(b, b.apart().borne() - b.unaided().borne()); })
      .def_property_readonly("dishes", &dishes_of)
      .def_property_readonly(
          "shopping",
          [](const py::object& b) { return shopping_of(b, shopping_list(b.cast<const B&>())); })
      .def_property_readonly("unpriced", [](const B& b) { return b.provisions().unpriced(); })
      .def_property_readonly("to_check", &B::to_check)
      .def_property_readonly("cautions", [](const B& b) { return listed(b.cautions()); })
      .def_property_readonly("cells", [](const B& b) { return cell_names(b); })
      .def(
          "explain", [](const B& b, const std::string& cell) { return explain(b, cell); },
          py::arg("cell"))
      .def(
          "why", [](const B& b, const std::string& cell) { return text_of(explain(b, cell)); },
          py::arg("cell"))
      .def("__repr__", [](const B& b) {
        const std::string least = at_least(b.provisions().unpriced());
        return "<Basket of " + std::to_string(b.dishes().size()) + " dishes: till " + least +
               tell_money(money(b, b.costs().till)).text + ", borne " + least +
               tell_money(money(b, b.costs().borne())).text + ">";
      });
  keep_by<DishCosts, &state_of_dish, &dish_of>(m, "BasketDish");
  keep<DishNeed>(m, "DishNeed");
  keep<BasketRow>(m, "BasketRow");
  keep_by<B, &state_of_basket, &basket_of>(m, "Basket");
  m.def(
      "basket",
      [](const std::vector<std::pair<PlacedTuple, std::shared_ptr<Recipe>>>& given,
         const std::shared_ptr<PriceBook>& prices, bool strict, const std::string& taxes,
         const std::shared_ptr<Stock>& stock, const std::string& day) {
        std::vector<Dish> dishes;
        for (const auto& [name, recipe] : given) dishes.push_back({placed(name), *recipe});
        const CostOptions options = cost_options(strict, taxes, stock, day);
        const py::gil_scoped_release released;
        return std::make_shared<Basket>(dishes, prices, options);
      },
      py::arg("dishes"), py::arg("prices"), py::arg("strict"), py::arg("taxes"), py::arg("stock"),
      py::arg("day"));
}

}  // namespace scalepan::bindings
