#include "bindings/bind_sizing.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "bindings/share.hpp"
#include "measure/amount.hpp"
#include "recipe/sizing.hpp"

namespace scalepan::bindings {

namespace {

/// A quantity, a number of pieces, or the text of either in the recipe's measures.
Quantity amount_of(const py::handle& given, const Recipe& recipe) {
  Quantity amount;
  if (py::isinstance<py::str>(given)) {
    amount = parse_quantity(given.cast<std::string>(), recipe.measures());
  } else if (py::isinstance<Quantity>(given)) {
    amount = given.cast<Quantity>();
  } else {
    amount = Quantity(number_of(given));
  }
  if (!amount.dimension().is_number()) return amount;
  return Quantity(amount.coherent(), Unit::named("piece"));
}

std::vector<LineStock> stock_of(const py::object& given, const Recipe& recipe) {
  std::vector<LineStock> stock;
  if (!py::isinstance<py::dict>(given)) {
    throw py::type_error("stock is a dict of lines or foods and amounts: {\"eggs\": \"30\"}");
  }
  for (const auto& [line, amount] : given.cast<py::dict>()) {
    stock.push_back({{line.cast<std::string>(), {}}, amount_of(amount, recipe)});
  }
  return stock;
}

/// What `scale` was given; None for what it was not.
class Request {
 public:
  Request(const Recipe& recipe, const SizeAsked& asked) : recipe_(recipe), asked_(asked) {}

  [[nodiscard]] Size size() const {
    const std::string way = only_way();
    if (way != "portions") expect_no_serving(way);
    if (way == "batch") return size_for_batch(recipe_, amount_of(asked_.batch, recipe_));
    if (way == "raw_batch")
      return size_for_batch(recipe_, amount_of(asked_.raw_batch, recipe_), true);
    if (way == "stock") return size_for_stock(recipe_, stock_of(asked_.stock, recipe_)).size;
    if (way == "factor") return size_of_factor(recipe_.serves(), number_of(asked_.factor));
    const Serving serving{
        number_of(asked_.portions), asked_.spare.is_none() ? Rational(0) : number_of(asked_.spare),
        asked_.serving_loss.is_none() ? Rational(0) : share_of(asked_.serving_loss)};
    if (asked_.portion_size.is_none()) return size_for_serving(recipe_, serving);
    return size_for_portions_of(recipe_, serving, amount_of(asked_.portion_size, recipe_));
  }

 private:
  using Named = std::pair<const char*, const py::object*>;

  [[nodiscard]] std::string only_way() const {
    std::vector<std::string> ways;
    for (const auto& [name, value] :
         {Named{"portions", &asked_.portions}, Named{"factor", &asked_.factor},
          Named{"batch", &asked_.batch}, Named{"raw_batch", &asked_.raw_batch},
          Named{"stock", &asked_.stock}}) {
      if (!value->is_none()) ways.emplace_back(name);
    }
    if (ways.size() == 1) return ways.front();
    fail("recipe.size",
         ways.empty() ? "no size is given"
                      : "a size is given in two ways, by " + ways[0] + " and by " + ways[1],
         "write one of: scale(portions=40), scale(factor=10), scale(batch=\"12 kg\"), "
         "scale(raw_batch=\"12 kg\"), scale(stock={\"eggs\": \"30\"})");
  }

  void expect_no_serving(const std::string& way) const {
    for (const auto& [name, value] :
         {Named{"portion_size", &asked_.portion_size}, Named{"spare", &asked_.spare},
          Named{"serving_loss", &asked_.serving_loss}}) {
      if (value->is_none()) continue;
      fail("recipe.size",
           std::string(name) + " goes with portions, but the size is given by " + way,
           "write scale(portions=40, " + std::string(name) + "=...)");
    }
  }

  const Recipe& recipe_;
  const SizeAsked& asked_;
};

}  // namespace

std::shared_ptr<Recipe> scaled_as_asked(const Recipe& recipe, const SizeAsked& asked) {
  return std::make_shared<Recipe>(recipe.sized(Request(recipe, asked).size()));
}

py::tuple stock_limit(const Recipe& recipe, const py::dict& stock) {
  const LimitedSize limited = size_for_stock(recipe, stock_of(stock, recipe));
  return py::make_tuple(limited.line, limited.exact);
}

}  // namespace scalepan::bindings
