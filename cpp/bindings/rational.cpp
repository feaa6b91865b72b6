// Exact numbers across the border.

#include <algorithm>
#include <string>

#include "bindings/pybind.hpp"
#include "exact/big.hpp"
#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"

namespace scalepan::bindings {

namespace {

constexpr std::ptrdiff_t most_float_digits = 12;

py::object attribute(const char* module, const char* name) {
  return py::module_::import(module).attr(name);
}

const py::object& fraction_type() {
  PYBIND11_CONSTINIT static py::gil_safe_call_once_and_store<py::object> storage;
  return storage.call_once_and_store_result([] { return attribute("fractions", "Fraction"); })
      .get_stored();
}

BigInt big_int_of(py::handle whole) {
  // Hexadecimal has no length limit in Python, decimal has.
  const auto text = py::reinterpret_steal<py::object>(PyNumber_ToBase(whole.ptr(), 16));
  if (!text) throw py::error_already_set();
  auto hex = text.cast<std::string>();
  const bool negative = hex.starts_with('-');
  const BigInt size(hex.substr(negative ? 1 : 0));
  return negative ? BigInt(-size) : size;
}

Rational whole_of(py::handle whole) {
  int overflow = 0;
  const long long word = PyLong_AsLongLongAndOverflow(whole.ptr(), &overflow);
  if (overflow == 0) {
    if (word == -1 && PyErr_Occurred() != nullptr) throw py::error_already_set();
    return word;
  }
  return make_rational(big_int_of(whole), 1);
}

/// Zeros at the end of a whole float only say how large it is.
std::ptrdiff_t significant_digits(std::string_view text) {
  text = text.substr(0, text.find('e'));
  if (text.find('.') == std::string_view::npos) {
    text = text.substr(0, text.find_last_not_of('0') + 1);
  }
  return std::ranges::count_if(text, is_digit);
}

Rational ratio_of(py::handle numerator, py::handle denominator) {
  return whole_of(numerator) / whole_of(denominator);
}

Rational decimal_of(py::handle source) {
  if (!source.attr("is_finite")().cast<bool>()) {
    fail("number.float",
         "the Decimal " + py::str(source).cast<std::string>() + " stands for no exact figure",
         "write a number");
  }
  // Looked at first: the ratio of 1e999999999 would fill the memory.
  const auto places = source.attr("adjusted")().cast<long>();
  if (places > most_exponent || places < -most_exponent) {
    fail("number.exponent", "the exponent of a number is too large",
         "at most " + std::to_string(most_exponent) + " is read");
  }
  const py::tuple ratio = source.attr("as_integer_ratio")();
  return ratio_of(ratio[0], ratio[1]);
}

/// The short decimal beside a float that sums have left, 0.3 beside 0.1 + 0.2; else an example.
std::string likely_meant(py::handle source) {
  const auto near = py::str("{:.12g}").format(py::float_(PyFloat_AsDouble(source.ptr())));
  const auto text = near.cast<std::string>();
  const bool is_short = significant_digits(text) < most_float_digits;
  if (!is_short || text.find('e') != std::string::npos) return ", such as \"1/3\"";
  return " (\"" + text + "\")";
}

/// 0.1 stands for one tenth; 0.1 + 0.2 stands for no figure anyone wrote.
Rational float_of(py::handle source) {
  // Of a plain float: a subclass may print itself as it likes.
  auto text = py::repr(py::float_(PyFloat_AsDouble(source.ptr()))).cast<std::string>();
  if (text.ends_with(".0")) text.erase(text.size() - 2);
  const std::ptrdiff_t digits = significant_digits(text);
  const bool finite = text.find_first_of("in") == std::string::npos;
  const bool leading_zero = text.starts_with("0.") || text.starts_with("-0.");
  if (!finite || digits - (leading_zero ? 1 : 0) > most_float_digits) {
    fail("number.float", "the float " + text + " stands for no exact figure",
         finite ? "write it as text" + likely_meant(source) + ", an int, a Fraction or a Decimal"
                : "write a number");
  }
  return parse_formula_number(text);
}

bool is_instance(py::handle source, const char* module, const char* name) {
  return py::isinstance(source, attribute(module, name));
}

}  // namespace

bool rational_from_python(py::handle source, Rational& out) {
  if (!source || source.is_none() || PyBool_Check(source.ptr()) != 0) return false;
  if (PyIndex_Check(source.ptr()) != 0) {
    const auto whole = py::reinterpret_steal<py::object>(PyNumber_Index(source.ptr()));
    if (!whole) throw py::error_already_set();
    out = whole_of(whole);
  } else if (PyUnicode_Check(source.ptr()) != 0) {
    out = parse_amount_number(source.cast<std::string>());
  } else if (PyFloat_Check(source.ptr()) != 0) {
    out = float_of(source);
  } else if (py::isinstance(source, fraction_type())) {
    out = ratio_of(source.attr("numerator"), source.attr("denominator"));
  } else if (is_instance(source, "decimal", "Decimal")) {
    out = decimal_of(source);
  } else {
    return false;
  }
  return true;
}

py::object int_of(const Rational& x) {
  if (x.is_word()) return py::int_(x.word_numerator());
  const BigInt whole = x.big().value.numerator();
  const BigInt size = boost::multiprecision::abs(whole);
  const std::string hex = (whole < 0 ? "-" : "") + size.str(0, std::ios_base::hex);
  return py::reinterpret_steal<py::object>(PyLong_FromString(hex.c_str(), nullptr, 16));
}

py::list packs_of(const std::vector<std::pair<Rational, std::string>>& packs) {
  py::list list;
  for (const auto& [count, text] : packs) list.append(py::make_tuple(int_of(count), text));
  return list;
}

py::object fraction_of(const Rational& x) {
  return fraction_type()(int_of(numerator(x)), int_of(denominator(x)));
}

}  // namespace scalepan::bindings
