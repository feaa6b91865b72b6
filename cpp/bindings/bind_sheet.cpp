#include "bindings/bind.hpp"
#include "bindings/bind_sweep.hpp"
#include "bindings/cell_value.hpp"
#include "bindings/kept.hpp"
#include "costing/costing.hpp"
#include "measure/unit.hpp"
#include "sheet/changes_of.hpp"
#include "sheet/sheet.hpp"

namespace scalepan::bindings {

namespace {

using namespace py::literals;

/// A formula where a value could stand.
struct FormulaText {
  std::string text;
};

/// Changes to be made together.
struct Changes {
  std::vector<Change> changes;
};

void take(Changes& to, Change change) { to.changes.push_back(std::move(change)); }

void take(Sheet& to, Change change) {
  std::vector<Change> one;
  one.push_back(std::move(change));
  const py::gil_scoped_release release;
  to.apply(one);
}

std::vector<NewColumn> columns_of(const py::dict& given, const py::dict& formulas) {
  std::vector<NewColumn> columns;
  for (const auto& [name, type] : given) {
    columns.push_back({name.cast<std::string>(), value_type_of(type.cast<std::string>())});
  }
  for (const auto& [name, formula] : formulas) {
    columns.push_back({name.cast<std::string>(), std::nullopt, formula.cast<std::string>()});
  }
  return columns;
}

/// A value, or a pair of a value and where it comes from, or a formula of its own.
GivenInRow given_in_row(const py::handle& column, const py::handle& given) {
  if (py::isinstance<FormulaText>(given)) {
    return {column.cast<std::string>(), std::nullopt, "", given.cast<FormulaText>().text};
  }
  if (!py::isinstance<py::tuple>(given))
    return {column.cast<std::string>(), cell_value_of(given), "", ""};
  const auto [value, source] = given.cast<std::pair<py::object, std::string>>();
  return {column.cast<std::string>(), cell_value_of(value), source, ""};
}

AddRow new_row(const std::string& block, const std::string& row, const py::dict& given,
               const std::string& before) {
  AddRow added{block, row, {}, before};
  for (const auto& [column, value] : given) added.given.push_back(given_in_row(column, value));
  return added;
}

template <typename Target, typename... Options>
void bind_verbs(py::class_<Target, Options...>& target) {
  using Text = const std::string&;
  using Given = const py::object&;
  target
      .def(
          "set",
          [](Target& to, Text name, Given value, Text source) {
            take(to, Set{name, cell_value_of(value), source});
          },
          py::arg("name"), py::arg("value"), py::kw_only(), py::arg("source") = "")
      .def(
          "redeclare",
          [](Target& to, Text name, Given value, Text source) {
            take(to, Set{name, cell_value_of(value), source, true});
          },
          py::arg("name"), py::arg("value"), py::kw_only(), py::arg("source") = "")
      .def(
          "define", [](Target& to, Text name, Text formula) { take(to, Define{name, formula}); },
          py::arg("name"), py::arg("formula"))
      .def(
          "override",
          [](Target& to, Text name, Given value, Text why, Text who, Text when) {
            take(to, PutOverride{name, {cell_value_of(value), why, who, when}});
          },
          py::arg("name"), py::arg("value"), py::kw_only(), py::arg("why"), py::arg("who") = "",
          py::arg("when") = "")
      .def(
          "release", [](Target& to, Text name) { take(to, Release{name}); }, py::arg("name"))
      .def(
          "remove", [](Target& to, Text name) { take(to, Remove{name}); }, py::arg("name"))
      .def(
          "rename", [](Target& to, Text name, Text new_name) { take(to, Rename{name, new_name}); },
          py::arg("name"), py::arg("to"))
      .def(
          "add_rows",
          [](Target& to, Text name, Given given, Given formulas) {
            take(to, AddBlock{name, columns_of(py::dict(given), py::dict(formulas))});
          },
          py::arg("name"), py::kw_only(), py::arg("given"), py::arg("formulas") = py::dict())
      .def(
          "add_row",
          [](Target& to, Text block, Text row, Given given, Text before) {
            take(to, new_row(block, row, py::dict(given), before));
          },
          py::arg("rows"), py::arg("row"), py::arg("given") = py::dict(), py::kw_only(),
          py::arg("before") = "")
      .def(
          "remove_row", [](Target& to, Text block, Text row) { take(to, RemoveRow{block, row}); },
          py::arg("rows"), py::arg("row"))
      .def(
          "move_row",
          [](Target& to, Text block, Text row, Text before) {
            take(to, MoveRow{block, row, before});
          },
          py::arg("rows"), py::arg("row"), py::kw_only(), py::arg("before") = "");
}

py::object given_as_python(const GivenInRow& one) {
  if (!one.formula.empty()) return py::cast(FormulaText{one.formula});
  const py::object value = one.value ? given_of(*one.value) : py::none();
  return one.source.empty() ? value : py::object(py::make_tuple(value, one.source));
}

/// (verb, what it is given), in the words of the verbs.
struct AsPython {
  static py::tuple verb(const char* name, py::dict given) { return py::make_tuple(name, given); }

  py::tuple operator()(const Set& set) const {
    return verb(
        set.other_kind ? "redeclare" : "set",
        py::dict("name"_a = set.name, "value"_a = given_of(set.value), "source"_a = set.source));
  }
  py::tuple operator()(const Define& define) const {
    return verb("define", py::dict("name"_a = define.name, "formula"_a = define.formula));
  }
  py::tuple operator()(const PutOverride& put) const {
    return verb("override",
                py::dict("name"_a = put.name, "value"_a = given_of(put.with.value),
                         "why"_a = put.with.why, "who"_a = put.with.who, "when"_a = put.with.when));
  }
  py::tuple operator()(const Release& release) const {
    return verb("release", py::dict("name"_a = release.name));
  }
  py::tuple operator()(const Remove& remove) const {
    return verb("remove", py::dict("name"_a = remove.name));
  }
  py::tuple operator()(const Rename& rename) const {
    return verb("rename", py::dict("name"_a = rename.name, "to"_a = rename.to));
  }
  py::tuple operator()(const AddBlock& block) const {
    py::dict given;
    py::dict formulas;
    for (const NewColumn& column : block.columns) {
      if (column.given) {
        given[py::str(column.name)] = type_text(*column.given);
      } else {
        formulas[py::str(column.name)] = column.formula;
      }
    }
    return verb("add_rows",
                py::dict("name"_a = block.name, "given"_a = given, "formulas"_a = formulas));
  }
  py::tuple operator()(const AddRow& row) const {
    py::dict given;
    for (const GivenInRow& one : row.given) {
      given[py::str(one.column)] = given_as_python(one);
    }
    return verb("add_row", py::dict("rows"_a = row.block, "row"_a = row.row, "given"_a = given,
                                    "before"_a = row.before));
  }
  py::tuple operator()(const RemoveRow& row) const {
    return verb("remove_row", py::dict("rows"_a = row.block, "row"_a = row.row));
  }
  py::tuple operator()(const MoveRow& row) const {
    return verb("move_row",
                py::dict("rows"_a = row.block, "row"_a = row.row, "before"_a = row.before));
  }

  static std::string type_text(const ValueType& type) {
    if (type.kind == ValueKind::quantity && !type.shown.symbol().empty())
      return type.shown.symbol();
    return type.name();
  }
};

py::list python_of(const std::vector<Outcome>& outcomes) {
  py::list list;
  for (const Outcome& outcome : outcomes) {
    list.append(std::visit([](const auto& one) { return bindings::python_of(one); }, outcome));
  }
  return list;
}

py::list singly(const Changes& changes) {
  py::list list;
  for (const Change& change : changes.changes) list.append(py::cast(Changes{{change}}));
  return list;
}

py::list listed(const Changes& changes) {
  py::list list;
  for (const Change& change : changes.changes) list.append(std::visit(AsPython(), change));
  return list;
}

void bind_changes(py::module_& m) {
  py::class_<FormulaText>(m, "Formula")
      .def(py::init([](std::string text) { return FormulaText{std::move(text)}; }), py::arg("text"))
      .def("__str__", [](const FormulaText& self) { return self.text; })
      .def("__repr__", [](const FormulaText& self) {
        return "scalepan.Formula(" + py::repr(py::str(self.text)).cast<std::string>() + ")";
      });
  py::class_<Changes> changes(m, "Changes");
  changes.def(py::init<>())
      .def("__len__", [](const Changes& self) { return self.changes.size(); })
      .def("listed", [](const Changes& self) { return listed(self); })
      .def(
          "extend",
          [](Changes& self, const Changes& others) {
            const std::vector<Change> added = others.changes;
            self.changes.insert(self.changes.end(), added.begin(), added.end());
          },
          py::arg("others"))
      .def("singly", [](const Changes& self) { return singly(self); })
      .def("ordered",
           [](const Changes& self) { return Changes{in_buildable_order(self.changes)}; });
  bind_verbs(changes);
  keep<FormulaText>(m, "Formula");
  keep<Changes>(m, "Changes", true);
}

}  // namespace

void bind_sheet(py::module_& m) {
  bind_interval(m);
  bind_changes(m);
  using Released = py::call_guard<py::gil_scoped_release>;
  SheetClass sheet(m, "Sheet");
  sheet.def(py::init([] { return std::make_shared<Sheet>(std::make_shared<FunctionTable>()); }))
      .def(py::init([](const Costing& costing) { return costing.sheet(); }), py::arg("costing"))
      .def(
          "apply", [](Sheet& self, const Changes& changes) { self.apply(changes.changes); },
          py::arg("changes"), Released())
      .def(
          "restore", [](Sheet& self, const Changes& changes) { self.restore(changes.changes); },
          py::arg("changes"), Released())
      .def("undo", &Sheet::undo, Released())
      .def("redo", &Sheet::redo, Released())
      .def(
          "value",
          [](const Sheet& self, const std::string& name) { return python_of(self.value(name)); },
          py::arg("name"))
      .def("told", &Sheet::told, py::arg("name"))
      .def("formula", &Sheet::formula, py::arg("name"))
      .def("__contains__", &Sheet::has, py::arg("name"))
      .def("cells", &Sheet::cells)
      .def("rows", &Sheet::rows, py::arg("name"))
      .def("columns", &Sheet::columns, py::arg("rows"))
      .def("blocks", &Sheet::blocks)
      .def("readers", &Sheet::readers, py::arg("name"))
      .def("explain", &Sheet::why, py::arg("name"))
      .def(
          "why", [](const Sheet& self, const std::string& name) { return text_of(self.why(name)); },
          py::arg("name"))
      .def_property_readonly("ran", &Sheet::ran)
      .def("changes", [](const Sheet& self) { return Changes{self.changes()}; })
      .def(
          "values_with",
          [](Sheet& self, const Changes& changes, const std::vector<std::string>& names) {
            std::vector<Outcome> outcomes;
            {
              const py::gil_scoped_release release;
              outcomes = self.values_with(changes.changes, names);
            }
            return python_of(outcomes);
          },
          py::arg("changes"), py::arg("names"));
  bind_verbs(sheet);
  bind_sweep(m, sheet);
}

}  // namespace scalepan::bindings
