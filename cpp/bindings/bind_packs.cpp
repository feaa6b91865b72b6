#include <memory>

#include "bindings/bind.hpp"
#include "bindings/placed.hpp"
#include "packs/price_book.hpp"
#include "packs/priced_cover.hpp"

namespace scalepan::bindings {

namespace {

std::shared_ptr<PriceBook> make_price_book(const std::vector<py::dict>& rows,
                                           const std::string& measures) {
  std::vector<Offer> offers;
  offers.reserve(rows.size());
  for (const py::dict& row : rows) {
    offers.push_back(
        read_offer({placed_at(row, "item"), placed_at(row, "sold_as"), placed_at(row, "pack"),
                    placed_at(row, "price"), placed_at(row, "currency"), placed_at(row, "keeps"),
                    placed_at(row, "shop"), placed_at(row, "date")},
                   measures_named(measures)));
  }
  return std::make_shared<PriceBook>(std::move(offers));
}

void bind_offer(py::module_& m) {
  py::class_<Offer>(m, "Offer")
      .def_readonly("item", &Offer::item)
      .def_property_readonly("sold_as",
                             [](const Offer& o) { return std::string(symbol_of(o.sold_as)); })
      .def_readonly("pack", &Offer::pack)
      .def_property_readonly("content", [](const Offer& o) { return o.contents.front().amount; })
      .def_readonly("price", &Offer::price)
      .def_property_readonly("keeps", [](const Offer& o) { return o.keeping.keeps; })
      .def_property_readonly("keeps_days", [](const Offer& o) { return o.keeping.days; })
      .def_readonly("shop", &Offer::shop)
      .def_readonly("date", &Offer::date)
      .def("__repr__", [](const Offer& o) {
        return "<Offer " + o.item + " " + o.pack + " " + o.price.text() + ">";
      });
}

}  // namespace

void bind_packs(py::module_& m) {
  bind_offer(m);
  py::class_<PriceBook, std::shared_ptr<PriceBook>>(m, "PriceBook")
      .def_property_readonly("offers", &PriceBook::offers)
      .def(
          "on",
          [](const PriceBook& book, const std::string& date,
             const std::vector<std::string>& shops) {
            return std::make_shared<PriceBook>(book.on(date, shops));
          },
          py::arg("date") = "", py::arg("shops") = std::vector<std::string>())
      .def("__len__", [](const PriceBook& book) { return book.offers().size(); })
      .def("__repr__", [](const PriceBook& book) {
        return "<PriceBook of " + std::to_string(book.offers().size()) + " offers>";
      });
  m.def("make_price_book", &make_price_book, py::arg("rows"), py::arg("measures"));

  py::class_<PricedCover>(m, "Cover")
      .def_property_readonly("packs", [](const PricedCover& c) { return packs_of(c.packs); })
      .def_readonly("price", &PricedCover::price)
      .def_readonly("leftover", &PricedCover::leftover)
      .def("__repr__", [](const PricedCover& c) {
        const std::string text = text_of(c.packs);
        return "<Cover " + (text.empty() ? "of no packs" : text) + " = " + c.price.text() + ">";
      });
  m.def(
      "cover",
      [](const Quantity& need, const std::vector<std::tuple<std::string, Quantity, Quantity>>& in) {
        std::vector<PricedPack> packs;
        packs.reserve(in.size());
        for (const auto& [text, size, price] : in) packs.push_back({text, size, price});
        return cover(need, packs);
      },
      py::arg("need"), py::arg("packs"));
}

}  // namespace scalepan::bindings
