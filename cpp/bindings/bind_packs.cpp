#include <algorithm>
#include <array>
#include <memory>
#include <optional>

#include "bindings/bind.hpp"
#include "bindings/kept.hpp"
#include "bindings/placed.hpp"
#include "exact/error.hpp"
#include "packs/price_book.hpp"
#include "packs/priced_cover.hpp"
#include "packs/stock.hpp"

namespace scalepan::bindings {

namespace {

template <typename Row, std::size_t Count>
Row row_of(const py::dict& given, const std::array<WrittenField<Row>, Count>& fields) {
  Row row;
  for (const WrittenField<Row>& one : fields) {
    row.*one.field = placed_at(given, std::string(one.column).c_str());
  }
  return row;
}

/// A row may say for itself which measures are meant.
Measures measures_of(const py::dict& given, Measures of_all) {
  const std::string own = placed_at(given, "measures").text;
  return own.empty() ? of_all : measures_named(own);
}

std::shared_ptr<PriceBook> make_price_book(const std::vector<py::dict>& rows,
                                           const std::string& measures) {
  const Measures of_all = measures_named(measures);
  std::vector<Offer> offers;
  offers.reserve(rows.size());
  for (const py::dict& row : rows) {
    offers.push_back(read_offer(row_of(row, price_fields), measures_of(row, of_all)));
  }
  return std::make_shared<PriceBook>(std::move(offers));
}

/// The fields as they were written, with `measures` and `at`, the place, where they are known.
template <typename Read>
py::dict written_in(const Read& read) {
  py::dict row;
  for (const auto& [column, text] : read.written->fields) row[py::str(std::string(column))] = text;
  const std::string measures(name_of(read.written->measures));
  if (!measures.empty()) row["measures"] = measures;
  if (const std::string place = read.place.text(); !place.empty()) row["at"] = place;
  return row;
}

/// A row as it was written: an object is what its row is read as.
struct RowState {
  std::vector<std::pair<std::string, std::string>> fields;
  Measures measures = Measures::unstated;
  Place place;
};

template <typename Read>
RowState row_state(const Read& read) {
  RowState state{{}, read.written->measures, read.place};
  for (const auto& [column, text] : read.written->fields) state.fields.emplace_back(column, text);
  return state;
}

template <typename Row, std::size_t Count>
Row row_of(const RowState& state, const std::array<WrittenField<Row>, Count>& fields) {
  Row row;
  for (const auto& [column, text] : state.fields) {
    const auto field = std::ranges::find(fields, column, &WrittenField<Row>::column);
    if (field == fields.end()) fail_damaged();
    row.*field->field = {text, state.place};
  }
  return row;
}

Offer offer_from(const RowState& state) {
  return read_offer(row_of(state, price_fields), state.measures);
}

StockItem item_from(const RowState& state) {
  return read_stock_item(row_of(state, stock_fields), state.measures);
}

std::unique_ptr<Offer> offer_of(const RowState& state) {
  return std::make_unique<Offer>(offer_from(state));
}

std::unique_ptr<StockItem> item_of(const RowState& state) {
  return std::make_unique<StockItem>(item_from(state));
}

std::vector<RowState> book_rows(const PriceBook& book) {
  std::vector<RowState> rows;
  for (const Offer& offer : book.offers()) rows.push_back(row_state(offer));
  return rows;
}

std::unique_ptr<PriceBook> book_of(const std::vector<RowState>& rows) {
  std::vector<Offer> offers;
  for (const RowState& row : rows) offers.push_back(offer_from(row));
  return std::make_unique<PriceBook>(std::move(offers));
}

std::vector<RowState> stock_rows(const Stock& stock) {
  std::vector<RowState> rows;
  for (const StockItem& item : stock.items()) rows.push_back(row_state(item));
  return rows;
}

std::unique_ptr<Stock> stock_of(const std::vector<RowState>& rows) {
  std::vector<StockItem> items;
  for (const RowState& row : rows) items.push_back(item_from(row));
  return std::make_unique<Stock>(std::move(items));
}

std::vector<std::string> terms_of(const Offer& offer) {
  std::vector<std::string> terms;
  for (const SeveralTogether& several : offer.terms.together) terms.push_back(several.text);
  for (const PriceFrom& from : offer.terms.from) terms.push_back(from.text);
  return terms;
}

std::shared_ptr<Stock> make_stock(const std::vector<py::dict>& rows, const std::string& measures) {
  const Measures of_all = measures_named(measures);
  std::vector<StockItem> items;
  items.reserve(rows.size());
  for (const py::dict& row : rows) {
    items.push_back(read_stock_item(row_of(row, stock_fields), measures_of(row, of_all)));
  }
  return std::make_shared<Stock>(std::move(items));
}

void bind_stock(py::module_& m) {
  py::class_<StockItem>(m, "StockItem")
      .def_readonly("item", &StockItem::item)
      .def_property_readonly("stage",
                             [](const StockItem& s) { return std::string(symbol_of(s.stage)); })
      .def_property_readonly("amount",
                             [](const StockItem& s) { return s.amount.contents.front().amount; })
      .def_readonly("value", &StockItem::value)
      .def_readonly("use_by", &StockItem::use_by)
      .def_property_readonly("row", &written_in<StockItem>)
      .def("__repr__",
           [](const StockItem& s) { return "<StockItem " + s.item + " " + s.amount.text + ">"; });
  py::class_<Stock, std::shared_ptr<Stock>>(m, "Stock")
      .def_property_readonly("items", &Stock::items)
      .def("__len__", [](const Stock& stock) { return stock.items().size(); })
      .def("__repr__", [](const Stock& stock) {
        return "<Stock of " + std::to_string(stock.items().size()) + " amounts>";
      });
  keep_by<StockItem, &row_state<StockItem>, &item_of>(m, "StockItem");
  keep_by<Stock, &stock_rows, &stock_of>(m, "Stock");
  m.def("make_stock", &make_stock, py::arg("rows"), py::arg("measures"));
}

void bind_offer(py::module_& m) {
  py::class_<Offer>(m, "Offer")
      .def_readonly("item", &Offer::item)
      .def_property_readonly("sold_as",
                             [](const Offer& o) { return std::string(symbol_of(o.sold_as)); })
      .def_property_readonly("pack", [](const Offer& o) { return o.pack.text; })
      .def_property_readonly("content",
                             [](const Offer& o) { return o.pack.contents.front().amount; })
      .def_readonly("price", &Offer::price)
      .def_property_readonly("terms", &terms_of)
      .def_property_readonly("least", [](const Offer& o) { return o.terms.least; })
      .def_property_readonly("limit", [](const Offer& o) { return o.terms.limit; })
      .def_property_readonly(
          "tax", [](const Offer& o) { return o.tax ? std::optional(o.tax->rate) : std::nullopt; })
      .def_property_readonly("tax_included",
                             [](const Offer& o) { return !o.tax || o.tax->included; })
      .def_readonly("deposit", &Offer::deposit)
      .def_property_readonly("keeps", [](const Offer& o) { return o.keeping.keeps; })
      .def_property_readonly("keeps_days", [](const Offer& o) { return o.keeping.days; })
      .def_readonly("shop", &Offer::shop)
      .def_readonly("date", &Offer::date)
      .def_property_readonly("row", &written_in<Offer>)
      .def("__repr__", [](const Offer& o) {
        return "<Offer " + o.item + " " + o.pack.text + " " + o.price.text() + ">";
      });
  keep_by<Offer, &row_state<Offer>, &offer_of>(m, "Offer");
}

void bind_cover(py::module_& m) {
  py::class_<PricedCover>(m, "Cover")
      .def_property_readonly("packs", [](const PricedCover& c) { return packs_of(c.packs); })
      .def_readonly("price", &PricedCover::price)
      .def_readonly("leftover", &PricedCover::leftover)
      .def("__repr__", [](const PricedCover& c) {
        const std::string text = text_of(c.packs);
        return "<Cover " + (text.empty() ? "of no packs" : text) + " = " + c.price.text() + ">";
      });
  keep<PricedCover>(m, "Cover");
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

CoverOrder order_named(const std::string& order) {
  if (order == "price") return CoverOrder::price_first;
  if (order == "leftover") return CoverOrder::leftover_first;
  fail("cover.order", "no order of covers is called \"" + excerpt(order) + "\"",
       "there are: price, leftover");
}

PricedFunction make_cover_function(const std::vector<py::tuple>& rows, const std::string& order) {
  std::vector<PricedPurchase> purchases;
  purchases.reserve(rows.size());
  for (const py::tuple& row : rows) {
    purchases.push_back({row[0].cast<std::string>(), row[1].cast<Quantity>(),
                         row[2].cast<Quantity>(), row[3].cast<std::size_t>(),
                         row[4].cast<Rational>(), row[5].cast<Rational>(),
                         row[6].cast<std::optional<Rational>>()});
  }
  const CoverOrder by = order_named(order);
  const py::gil_scoped_release release;
  return PricedFunction(std::move(purchases), by);
}

struct FunctionState {
  std::vector<PricedPurchase> purchases;
  CoverOrder order = CoverOrder::price_first;
};

FunctionState function_state(const PricedFunction& function) {
  return {function.purchases(), function.order()};
}

std::unique_ptr<PricedFunction> function_of(FunctionState state) {
  return std::make_unique<PricedFunction>(std::move(state.purchases), state.order);
}

/// A quantity, or an amount as written.
Quantity amount_of(const py::object& given) {
  if (py::isinstance<Quantity>(given)) return given.cast<Quantity>();
  return py::module_::import("scalepan._core").attr("quantity")(given).cast<Quantity>();
}

void bind_cover_function(py::module_& m) {
  py::class_<PricedStep>(m, "CoverStep")
      .def_readonly("after", &PricedStep::after)
      .def_readonly("upto", &PricedStep::upto)
      .def_readonly("cover", &PricedStep::cover)
      .def("__repr__", [](const PricedStep& s) {
        return "<CoverStep above " + s.after.text() + " up to " + s.upto.text() + ": " +
               text_of(s.cover.packs) + " = " + s.cover.price.text() + ">";
      });
  py::class_<PricedFunction>(m, "CoverFunction")
      .def(
          "at",
          [](const PricedFunction& f, const py::object& need) {
            const Quantity amount = amount_of(need);
            const py::gil_scoped_release release;
            return f.at(amount);
          },
          py::arg("need"))
      .def(
          "steps",
          [](const PricedFunction& f, const py::object& low, const py::object& high) {
            const Quantity from = amount_of(low);
            const Quantity upto = amount_of(high);
            const py::gil_scoped_release release;
            return f.steps(from, upto);
          },
          py::arg("low"), py::arg("high"))
      .def_property_readonly("period",
                             [](const PricedFunction& f) -> std::optional<Quantity> {
                               const auto period = f.period();
                               return period ? std::optional(period->first) : std::nullopt;
                             })
      .def_property_readonly("repeats_above",
                             [](const PricedFunction& f) -> std::optional<Quantity> {
                               const auto period = f.period();
                               return period ? std::optional(period->second) : std::nullopt;
                             })
      .def_property_readonly("most", &PricedFunction::most)
      .def_property_readonly("kernel", &PricedFunction::kernel)
      .def("__repr__",
           [](const PricedFunction& f) { return "<CoverFunction, " + f.kernel() + ">"; });
  keep<PricedStep>(m, "CoverStep");
  keep_by<PricedFunction, &function_state, &function_of>(m, "CoverFunction");
  m.def("make_cover_function", &make_cover_function, py::arg("rows"), py::arg("order"));
}

}  // namespace

void bind_packs(py::module_& m) {
  bind_offer(m);
  bind_stock(m);
  py::class_<PriceBook, std::shared_ptr<PriceBook>>(m, "PriceBook")
      .def_property_readonly("offers", &PriceBook::offers)
      .def(
          "on",
          [](const PriceBook& book, const std::string& date,
             const std::vector<std::string>& shops) {
            return std::make_shared<PriceBook>(book.on(date, shops));
          },
          py::arg("date") = "", py::arg("shops") = std::vector<std::string>())
      .def(
          "__add__",
          [](const PriceBook& first, const PriceBook& second) {
            return std::make_shared<PriceBook>(first + second);
          },
          py::is_operator())
      .def("__len__", [](const PriceBook& book) { return book.offers().size(); })
      .def("__repr__", [](const PriceBook& book) {
        return "<PriceBook of " + std::to_string(book.offers().size()) + " offers>";
      });
  keep_by<PriceBook, &book_rows, &book_of>(m, "PriceBook");
  m.def("make_price_book", &make_price_book, py::arg("rows"), py::arg("measures"));
  bind_cover(m);
  bind_cover_function(m);
}

}  // namespace scalepan::bindings
