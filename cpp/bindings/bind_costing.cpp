#include <memory>

#include "bindings/at_least.hpp"
#include "bindings/bind.hpp"
#include "bindings/bind_choices.hpp"
#include "bindings/caution_list.hpp"
#include "bindings/cell_value.hpp"
#include "bindings/cost_options.hpp"
#include "bindings/costing_state.hpp"
#include "bindings/curve_of.hpp"
#include "bindings/kept.hpp"
#include "bindings/share.hpp"
#include "bindings/shopping_of.hpp"
#include "costing/caution.hpp"
#include "costing/costing.hpp"
#include "costing/costing_why.hpp"
#include "costing/label.hpp"
#include "costing/leftovers.hpp"
#include "costing/recipe_checks.hpp"
#include "costing/shopping.hpp"
#include "costing/targets.hpp"
#include "measure/amount.hpp"
#include "measure/told.hpp"

namespace scalepan::bindings {

namespace {

void bind_shopping(py::module_& m) {
  using Row = ShoppingRow;
  py::class_<Row>(m, "ShoppingRow")
      .def_readonly("item", &Row::item)
      .def_readonly("lines", &Row::lines)
      .def_readonly("need", &Row::need)
      .def_readonly("from_stock", &Row::from_stock)
      .def_property_readonly("packs", [](const Row& row) { return packs_of(row.packs); })
      .def_readonly("terms", &Row::terms)
      .def_readonly("price", &Row::price)
      .def_readonly("deposit", &Row::deposit)
      .def_readonly("leftover", &Row::leftover)
      .def_property_readonly("keeps", [](const Row& row) { return row.keeping.keeps; })
      .def_property_readonly("keeps_days", [](const Row& row) { return row.keeping.days; })
      .def_readonly("shops", &Row::shops)
      .def("__repr__", [](const Row& row) {
        return "<ShoppingRow " + row.item + " " + tell_money(row.price).text + ">";
      });
  py::class_<Leftover>(m, "Leftover")
      .def_readonly("item", &Leftover::item)
      .def_readonly("amount", &Leftover::amount)
      .def_readonly("value", &Leftover::value)
      .def_readonly("bought", &Leftover::bought)
      .def_property_readonly("keeps",
                             [](const Leftover& l) { return !l.bought || l.keeping.keeps; })
      .def_property_readonly("keeps_days", [](const Leftover& l) { return l.keeping.days; })
      .def_readonly("use_by", &Leftover::use_by)
      .def("__repr__", [](const Leftover& l) {
        return "<Leftover " + l.item + " " + tell(l.amount).text + ">";
      });
}

void bind_targets(py::module_& m) {
  py::class_<WithinSpend>(m, "WithinSpend")
      .def_readonly("portions", &WithinSpend::portions)
      .def_readonly("till", &WithinSpend::till)
      .def_readonly("till_next", &WithinSpend::till_next);
  py::class_<Driver>(m, "Driver")
      .def_readonly("item", &Driver::item)
      .def_readonly("lines", &Driver::lines)
      .def_readonly("borne", &Driver::borne)
      .def_readonly("share", &Driver::share)
      .def_readonly("more_till", &Driver::more_till)
      .def_readonly("more_borne", &Driver::more_borne);
}

/// As deep as the tree, which is bounded.
py::dict data_of(const Why& why) {
  py::list parts;
  for (const Why& part : why.parts) parts.append(data_of(part));
  py::dict data;
  data["name"] = why.name;
  data["figure"] = why.figure;
  data["how"] = why.how;
  data["source"] = why.source;
  data["parts"] = parts;
  return data;
}

void bind_why(py::module_& m) {
  py::class_<Why>(m, "Why")
      .def_readonly("name", &Why::name)
      .def_readonly("figure", &Why::figure)
      .def_readonly("how", &Why::how)
      .def_readonly("source", &Why::source)
      .def_readonly("parts", &Why::parts)
      .def("__str__", [](const Why& why) { return text_of(why); })
      .def("_tree_html", &html_of)
      .def("data", &data_of);
}

py::list cautions(const Recipe& recipe) { return listed(cautions_for(recipe)); }

void bind_label(py::module_& m) {
  py::class_<LabelItem>(m, "LabelItem")
      .def_readonly("name", &LabelItem::name)
      .def_readonly("grams", &LabelItem::grams)
      .def_readonly("weighed", &LabelItem::weighed)
      .def_readonly("allergens", &LabelItem::allergens)
      .def_readonly("check_pack", &LabelItem::check_pack)
      .def_readonly("optional", &LabelItem::optional)
      .def_readonly("parts", &LabelItem::parts)
      .def("__repr__", [](const LabelItem& i) { return "<LabelItem " + i.name + ">"; });
  py::class_<Label>(m, "Label")
      .def_readonly("items", &Label::items)
      .def_readonly("allergens_eu", &Label::allergens_eu)
      .def_readonly("allergens_us", &Label::allergens_us)
      .def_readonly("unknown", &Label::unknown)
      .def_readonly("text", &Label::text)
      .def("__str__", [](const Label& label) { return label.text; });
  m.def("label", &label_of, py::arg("recipe"));
}

std::vector<Offer> offers_of(const Costing& costing) {
  std::vector<Offer> offers;
  for (const Offer* offer : costing.plan().offers(costing.provisions().lines())) {
    offers.push_back(*offer);
  }
  return offers;
}

/// Made once a costing, so that what Python keeps beside the cells stays.
py::object sheet_of(const py::object& costing) {
  constexpr const char* kept = "_sheet";
  if (!py::hasattr(costing, kept)) {
    costing.attr(kept) = py::module_::import("scalepan.sheets").attr("Sheet")(costing);
  }
  return costing.attr(kept);
}

py::module_ files() { return py::module_::import("scalepan.costing_files"); }

/// As `cost` takes them.
py::dict options_of(const Costing& costing) {
  const CostOptions& options = costing.plan().options();
  py::dict told;
  told["strict"] = options.strict;
  told["taxes"] = options.taxes == Taxes::with ? "with" : "without";
  told["stock"] = options.stock == nullptr ? py::object(py::none())
                                           : py::cast(std::make_shared<Stock>(*options.stock));
  told["day"] = options.day;
  return told;
}

}  // namespace

CostingState state_of_costing(const Costing& costing) {
  return {
      std::make_shared<const Recipe>(costing.recipe()),
      {costing.plan().prices()->shared_book(), costing.plan().offers(costing.provisions().lines())},
      costing.plan().options()};
}

std::unique_ptr<Costing> costing_of(CostingState state) {
  if (state.recipe == nullptr || state.prices.whole == nullptr) fail_damaged();
  return std::make_unique<Costing>(*state.recipe, std::move(state.prices.whole),
                                   std::move(state.options));
}

void bind_costing(py::module_& m) {
  bind_shopping(m);
  bind_why(m);
  bind_targets(m);
  bind_label(m);
  bind_choices(m);
  CostingClass costing(m, "Costing", py::dynamic_attr());
  add_choices(costing);
  costing
      .def_property_readonly("recipe",
                             [](const Costing& c) { return std::make_shared<Recipe>(c.recipe()); })
      .def_property_readonly(
          "recipe_now", [](const Costing& c) { return std::make_shared<Recipe>(c.recipe_now()); })
      .def_property_readonly("till", [](const Costing& c) { return c.cost("till"); })
      .def_property_readonly("used", [](const Costing& c) { return c.cost("used"); })
      .def_property_readonly("thrown", [](const Costing& c) { return c.cost("thrown"); })
      .def_property_readonly("borne", [](const Costing& c) { return c.cost("borne"); })
      .def_property_readonly(
          "closing",
          [](const Costing& c) { return Quantity(c.now()->costs().closing, c.plan().money()); })
      .def_property_readonly(
          "opening",
          [](const Costing& c) { return Quantity(c.now()->costs().opening, c.plan().money()); })
      .def_property_readonly("deposit", [](const Costing& c) { return c.now()->deposit(); })
      .def_property_readonly("left", [](const Costing& c) { return leftovers(*c.now()); })
      .def("per_portion", &Costing::per_portion, py::arg("which") = "borne")
      .def_property_readonly("unpriced", [](const Costing& c) { return c.now()->unpriced(); })
      .def_property_readonly("to_check", &Costing::to_check)
      .def_property_readonly("shopping",
                             [](const py::object& c) {
                               return shopping_of(c,
                                                  shopping_list(*c.cast<const Costing&>().now()));
                             })
      .def_property_readonly("cautions", [](const Costing& c) { return cautions(c.recipe_now()); })
      .def_property_readonly("cells", &cell_names)
      .def("explain", &explain, py::arg("cell"))
      .def(
          "why",
          [](const Costing& c, const std::string& cell) { return text_of(explain(c, cell)); },
          py::arg("cell"))
      .def_property_readonly("offers", &offers_of)
      .def_property_readonly("options", &options_of)
      .def_property_readonly("sheet", &sheet_of)
      .def("text", [](const py::object& c) { return files().attr("costing_text")(c); })
      .def(
          "save",
          [](const py::object& c, const py::object& path) {
            files().attr("save_costing")(c, path);
          },
          py::arg("path"))
      .def(
          "refresh",
          [](const py::object& c, const py::object& prices, const py::object& catalog) {
            return files().attr("refreshed")(c, prices, catalog);
          },
          py::arg("prices") = py::none(), py::arg("catalog") = py::none())
      .def(
          "override",
          [](const Costing& c, const std::string& name, const py::object& value,
             const std::string& why, const std::string& who, const std::string& when) {
            c.override_figure(name, {cell_value_of(value), why, who, when});
          },
          py::arg("name"), py::arg("value"), py::kw_only(), py::arg("why"), py::arg("who") = "",
          py::arg("when") = "")
      .def("release", &Costing::release, py::arg("name"))
      .def_property_readonly("is_changed", &Costing::is_changed)
      .def("curve", &curve_of, py::arg("portions"))
      .def(
          "most_portions",
          [](const Costing& c, const Quantity& spend) {
            c.expect_unchanged("most portions");
            return most_portions(c, spend);
          },
          py::arg("spend"))
      .def(
          "most_portions",
          [](const Costing& c, const std::string& spend) {
            c.expect_unchanged("most portions");
            return most_portions(c, parse_quantity(spend));
          },
          py::arg("spend"))
      .def(
          "drivers",
          [](const Costing& c, const py::object& more) {
            c.expect_unchanged("drivers");
            return cost_drivers(c, share_of(more));
          },
          py::arg("more") = "10 %")
      .def("__repr__", [](const Costing& c) {
        const std::string least = at_least(c.now()->unpriced());
        return "<Costing of " + c.recipe().name() + " for " +
               Quantity(c.recipe_now().portions()).text() + ": till " + least +
               tell_money(c.cost("till")).text + ", borne " + least +
               tell_money(c.cost("borne")).text + ">";
      });
  m.def(
      "cost",
      [](const Recipe& recipe, const std::shared_ptr<PriceBook>& prices, bool strict,
         const std::string& taxes, const std::shared_ptr<Stock>& stock, const std::string& day) {
        return std::make_shared<Costing>(recipe, prices, cost_options(strict, taxes, stock, day));
      },
      py::arg("recipe"), py::arg("prices"), py::arg("strict"), py::arg("taxes"), py::arg("stock"),
      py::arg("day"));
  keep<ShoppingRow>(m, "ShoppingRow");
  keep<Leftover>(m, "Leftover");
  keep<WithinSpend>(m, "WithinSpend");
  keep<Driver>(m, "Driver");
  keep<Why>(m, "Why");
  keep<LabelItem>(m, "LabelItem");
  keep<Label>(m, "Label");
  keep_by<Costing, &state_of_costing, &costing_of>(m, "Costing", true);
  m.def("twin", [](const Costing& c) { return std::make_shared<Costing>(c); }, py::arg("costing"));
  m.def("lines_to_check", &lines_to_check, py::arg("recipe"));
  m.def("cautions", &cautions, py::arg("recipe"));
  m.def(
      "safety_cautions", [](const Recipe& recipe) { return listed(safety_cautions(recipe)); },
      py::arg("recipe"));
  m.def("caution_footing", [] { return std::string(caution_footing()); });
}

}  // namespace scalepan::bindings
