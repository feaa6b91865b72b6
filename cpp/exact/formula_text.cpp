// The formula grammar of number_text.hpp.
#include <utility>

#include "exact/digits.hpp"
#include "exact/error.hpp"
#include "exact/number_text.hpp"
#include "exact/text.hpp"

namespace scalepan {

namespace {

/// Recursive descent over the formula grammar; the depth is limited, so the stack is too.
class FormulaReader {
 public:
  explicit FormulaReader(std::string_view text) : text_(text) {}

  Rational read() {
    Rational value = sum();
    skip_spaces();
    if (position_ < text_.size()) unreadable();
    return value;
  }

 private:
  Rational sum() {
    Rational value = product();
    while (true) {
      if (take('+')) {
        value += product();
      } else if (take('-')) {
        value -= product();
      } else {
        return value;
      }
    }
  }

  Rational product() {
    Rational value = signed_atom();
    while (true) {
      if (take('*')) {
        value *= signed_atom();
      } else if (take('/')) {
        skip_spaces();
        const std::size_t start = position_;
        const Rational divisor = signed_atom();
        value /= nonzero(divisor, start);
      } else {
        return value;
      }
    }
  }

  Rational signed_atom() {
    bool negative = false;
    while (take('-')) negative = !negative;
    Rational value = atom();
    return negative ? -value : value;
  }

  Rational atom() {
    if (!take('(')) return literal();
    if (++depth_ > most_depth) {
      fail_at(position_, "number.depth",
              "more than " + std::to_string(most_depth) + " brackets are open at once");
    }
    Rational value = sum();
    if (!take(')')) unreadable();
    --depth_;
    return value;
  }

  Rational literal() {
    skip_spaces();
    const bool point_first = text_.substr(position_).starts_with('.');
    if (!digit_at(text_, position_ + (point_first ? 1 : 0))) unreadable();
    Rational value = whole_of(read_digits(text_, position_));
    if (position_ < text_.size() && text_[position_] == '.' && digit_at(text_, position_ + 1)) {
      value = read_after_point(text_, position_, value);
    }
    return value * exponent();
  }

  Rational exponent() {
    std::size_t probe = position_;
    if (probe >= text_.size() || (text_[probe] != 'e' && text_[probe] != 'E')) return 1;
    ++probe;
    const bool negative = probe < text_.size() && text_[probe] == '-';
    if (negative || (probe < text_.size() && text_[probe] == '+')) ++probe;
    if (!digit_at(text_, probe)) return 1;
    const std::size_t start = probe;
    const Rational size = whole_of(read_digits(text_, probe));
    if (size > most_exponent) {
      fail_at(start, "number.exponent", "the exponent of a number is too large",
              "at most " + std::to_string(most_exponent) + " is read");
    }
    position_ = probe;
    const int places = static_cast<int>(size.word_numerator());
    return power(10, negative ? -places : places);
  }

  void skip_spaces() {
    while (position_ < text_.size() && text_[position_] == ' ') ++position_;
  }

  bool take(char sign) {
    skip_spaces();
    if (position_ >= text_.size() || text_[position_] != sign) return false;
    ++position_;
    return true;
  }

  [[noreturn]] void unreadable() const {
    const std::string rest = excerpt(text_.substr(position_));
    fail_at(position_, "number.unreadable",
            rest.empty() ? "a number is missing at the end"
                         : "no number is written in \"" + rest + "\"");
  }

  std::string_view text_;
  std::size_t position_ = 0;
  int depth_ = 0;
};

}  // namespace

Rational parse_formula_number(std::string_view text) { return FormulaReader(text).read(); }

}  // namespace scalepan
