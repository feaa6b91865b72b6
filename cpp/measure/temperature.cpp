#include "measure/temperature.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "exact/error.hpp"
#include "exact/rounding.hpp"
#include "exact/text.hpp"

namespace scalepan {

namespace {

constexpr std::size_t most_figures = 6;
const Rational widest_pair(10);

struct ScaleWord {
  std::string_view word;
  Scale scale;
};

constexpr std::array scale_words = std::to_array<ScaleWord>({
    {"celsius", Scale::celsius},
    {"fahrenheit", Scale::fahrenheit},
    {"c", Scale::celsius},
    {"f", Scale::fahrenheit},
});

std::string_view symbol_of(Scale scale) { return scale == Scale::celsius ? "°C" : "°F"; }

/// The length of a minus at `at`, or 0.
std::size_t minus_length(std::string_view text, std::size_t at) {
  if (text.substr(at).starts_with('-')) return 1;
  return text.substr(at).starts_with("\u2212") ? 3 : 0;
}

class Reader {
 public:
  Reader(std::string_view text, std::size_t at, DecimalMark mark)
      : text_(text), at_(at), mark_(mark) {}

  [[nodiscard]] std::size_t at() const { return at_; }
  [[nodiscard]] ScaleMark scale_mark() const { return scale_mark_; }
  /// Whether words follow in the bracket of the other scale: `71 °C (160 °F in the middle)`.
  [[nodiscard]] bool open_bracket() const { return open_; }

  std::optional<WrittenTemperature> read_pair() {
    const auto written = read_one();
    if (!written) return std::nullopt;
    WrittenTemperature pair{*written, std::nullopt};
    const std::size_t end = at_;
    const bool bracket = take("(");
    if (!bracket && !take("/")) return pair;
    const ScaleMark first_mark = scale_mark_;
    const auto beside = read_one();
    scale_mark_ = first_mark;
    if (!beside || beside->scale == written->scale) {
      at_ = end;
      return pair;
    }
    open_ = bracket && !take(")");
    pair.beside = beside;
    return pair;
  }

  /// Degrees without a scale, where `read_pair` found nothing.
  [[nodiscard]] std::optional<Rational> bare_degrees() {
    const auto degrees = read_degrees();
    take_sign();
    skip();
    return at_ == text_.size() ? degrees : std::nullopt;
  }

 private:
  std::optional<Temperature> read_one() {
    const std::size_t start = at_;
    const auto low = read_degrees();
    if (!low) return std::nullopt;
    std::optional<Scale> own;
    const auto high = read_high(own);
    const auto scale = read_scale();
    if (!scale || (own && *own != *scale)) {
      at_ = start;
      return std::nullopt;
    }
    return Temperature{*low, high.value_or(*low), *scale};
  }

  std::optional<Rational> read_degrees() {
    skip();
    const std::size_t minus = minus_length(text_, at_);
    std::size_t end = at_ + minus;
    const std::size_t first = end;
    const char point = mark_ == DecimalMark::comma ? ',' : '.';
    while (is_figure(end)) ++end;
    if (end == first) return std::nullopt;
    if (end + 1 < text_.size() && text_[end] == point && is_figure(end + 1)) {
      do ++end;
      while (is_figure(end));
    }
    if (end - first > most_figures) return std::nullopt;
    std::size_t at = 0;
    const auto degrees = read_amount_number(text_.substr(first, end - first), at, mark_);
    at_ = end;
    return minus > 0 ? -*degrees : *degrees;
  }

  /// Also sets the scale where the low end has one of its own, `180 °C to 200 °C`.
  std::optional<Rational> read_high(std::optional<Scale>& own) {
    const std::size_t start = at_;
    own = read_scale();
    if (take("to") || take("-") || take("–")) {
      if (auto high = read_degrees()) return high;
    }
    own.reset();
    at_ = start;
    return std::nullopt;
  }

  std::optional<Scale> read_scale() {
    for (const auto& [whole, scale] :
         {std::pair{"℃", Scale::celsius}, std::pair{"℉", Scale::fahrenheit}}) {
      if (!take(whole)) continue;
      scale_mark_ = ScaleMark::sign;
      return scale;
    }
    const bool sign = take_sign();
    skip();
    for (const ScaleWord& known : scale_words) {
      const std::string word = lower(text_.substr(at_, known.word.size()));
      const std::size_t end = at_ + known.word.size();
      if (word != known.word || goes_on(end)) continue;
      at_ = end;
      scale_mark_ = sign                    ? ScaleMark::sign
                    : known.word.size() > 1 ? ScaleMark::word
                                            : ScaleMark::letter;
      return known.scale;
    }
    return std::nullopt;
  }

  bool take_sign() {
    return take("°") || take("º") || take_word("degrees") || take_word("degree") ||
           take_word("deg");
  }

  bool take(std::string_view sign) {
    std::size_t probe = at_;
    skip_spaces(text_, probe);
    if (!text_.substr(probe).starts_with(sign)) return false;
    at_ = probe + sign.size();
    return true;
  }

  bool take_word(std::string_view word) {
    std::size_t probe = at_;
    skip_spaces(text_, probe);
    if (lower(text_.substr(probe, word.size())) != word || goes_on(probe + word.size())) {
      return false;
    }
    at_ = probe + word.size();
    return true;
  }

  void skip() { skip_spaces(text_, at_); }
  [[nodiscard]] bool is_figure(std::size_t at) const {
    return at < text_.size() && is_digit(text_[at]);
  }
  [[nodiscard]] bool goes_on(std::size_t at) const {
    return at < text_.size() && (is_letter(text_[at]) || is_digit(text_[at]));
  }

  std::string_view text_;
  std::size_t at_;
  DecimalMark mark_;
  ScaleMark scale_mark_ = ScaleMark::letter;
  bool open_ = false;
};

std::string as_written(const Temperature& temperature) {
  const std::string low = exact_text(temperature.low);
  const bool one = temperature.low == temperature.high;
  return (one ? low : low + " to " + exact_text(temperature.high)) + " " +
         std::string(symbol_of(temperature.scale));
}

std::string in_other_scale(const Temperature& written) {
  const Scale scale = other_than(written.scale);
  const auto whole = [&](const Rational& degrees) {
    return round_to_places(degrees_in(degrees, written.scale, scale), 0, Rounding::half_up);
  };
  const Rounded low = whole(written.low);
  const Rounded high = whole(written.high);
  const bool exact = low.error.is_zero() && high.error.is_zero();
  return (exact ? "" : "≈ ") + as_written({low.value, high.value, scale});
}

void expect_possible(const Temperature& read, std::size_t at) {
  static const Rational absolute_zero(-27315, 100);
  for (const Rational& degrees : {read.low, read.high}) {
    if (degrees_in(degrees, read.scale, Scale::celsius) >= absolute_zero) continue;
    fail_at(at, "temperature.below_zero",
            exact_text(degrees) + " " + std::string(symbol_of(read.scale)) +
                " is below absolute zero, -273.15 °C");
  }
}

void expect_one_heat(const Temperature& written, const Temperature& beside, std::size_t at) {
  const auto apart = [&](const Rational& one, const Rational& other) {
    return abs(degrees_in(one, written.scale, Scale::fahrenheit) -
               degrees_in(other, beside.scale, Scale::fahrenheit)) > widest_pair;
  };
  if (!apart(written.low, beside.low) && !apart(written.high, beside.high)) return;
  fail_at(at, "temperature.pair",
          told({beside, std::nullopt}) + " is written beside " + told({written, std::nullopt}) +
              ", and the two differ by more than " + exact_text(widest_pair) + " °F",
          "write one of the two; the other is added");
}

/// How many degrees of the other scale are one of this.
Rational other_degree(Scale scale) {
  return scale == Scale::celsius ? Rational(9, 5) : Rational(5, 9);
}

/// Where a number may begin: at its figures, or at the minus before them. A figure behind any dash
/// is part of what stands before it.
bool number_starts(std::string_view text, std::size_t at) {
  const std::size_t first = at + minus_length(text, at);
  if (first >= text.size() || !is_digit(text[first])) return false;
  const std::string_view before = text.substr(0, at);
  if (before.empty()) return true;
  for (const std::string_view joint : {"-", ".", ",", "/", "\u2212", "\u2013", "\u2014"}) {
    if (before.ends_with(joint)) return false;
  }
  return !is_letter(before.back()) && !is_digit(before.back());
}

}  // namespace

Rational degrees_in(const Rational& degrees, Scale from, Scale to) {
  if (from == to) return degrees;
  if (to == Scale::fahrenheit) return degrees * Rational(9, 5) + Rational(32);
  return (degrees - Rational(32)) * Rational(5, 9);
}

WrittenTemperature parse_temperature(std::string_view text, DecimalMark mark) {
  const std::string plain = with_plain_spaces(text);
  const std::string_view whole = trimmed(plain);
  const auto offset = static_cast<std::size_t>(whole.data() - plain.data());
  return at_offset(offset, [&] {
    Reader reader(whole, 0, mark);
    const auto read = reader.read_pair();
    if (read && reader.at() == whole.size() && !reader.open_bracket()) {
      expect_heat(*read, 0);
      return *read;
    }
    if (const auto bare = Reader(whole, 0, mark).bare_degrees()) {
      const Temperature celsius{*bare, *bare, Scale::celsius};
      const Temperature fahrenheit{*bare, *bare, Scale::fahrenheit};
      fail_at(0, "temperature.scale",
              "it is not said in which scale \"" + excerpt(whole) + "\" is: " +
                  told({celsius, std::nullopt}) + " or " + told({fahrenheit, std::nullopt}),
              "write the scale: " + as_written(celsius) + " or " + as_written(fahrenheit));
    }
    fail_at(0, "temperature.unreadable", "\"" + excerpt(whole) + "\" is no temperature",
            "write degrees and scale: 200 °C, 390 °F, 180 to 200 °C; gas marks are not read");
  });
}

std::string told(const WrittenTemperature& temperature) {
  const std::string beside =
      temperature.beside ? as_written(*temperature.beside) : in_other_scale(temperature.written);
  return as_written(temperature.written) + " (" + beside + ")";
}

std::string told_difference(const WrittenTemperature& difference) {
  const Temperature& written = difference.written;
  const auto tenths = [&](const Rational& degrees) {
    return round_to_places(degrees * other_degree(written.scale), 1, Rounding::half_up);
  };
  const Rounded low = tenths(written.low);
  const Rounded high = tenths(written.high);
  const bool exact = low.error.is_zero() && high.error.is_zero();
  const std::string other =
      (exact ? "" : "≈ ") + as_written({low.value, high.value, other_than(written.scale)});
  return as_written(written) + " (" + (difference.beside ? as_written(*difference.beside) : other) +
         ")";
}

std::optional<FoundTemperature> temperature_at(std::string_view text, std::size_t at,
                                               DecimalMark mark) {
  if (!number_starts(text, at)) return std::nullopt;
  Reader reader(text, at, mark);
  const auto read = reader.read_pair();
  if (!read) return std::nullopt;
  return FoundTemperature{*read, reader.at(), reader.scale_mark(), reader.open_bracket()};
}

void expect_heat(const WrittenTemperature& read, std::size_t at) {
  expect_possible(read.written, at);
  if (!read.beside) return;
  expect_possible(*read.beside, at);
  expect_one_heat(read.written, *read.beside, at);
}

void expect_difference(const WrittenTemperature& difference, std::size_t at) {
  if (!difference.beside) return;
  const Temperature& written = difference.written;
  const Temperature& beside = *difference.beside;
  const Rational in_fahrenheit = beside.scale == Scale::fahrenheit ? 1 : Rational(9, 5);
  const auto apart = [&](const Rational& one, const Rational& other) {
    return abs(one * other_degree(written.scale) - other) * in_fahrenheit > widest_pair;
  };
  if (!apart(written.low, beside.low) && !apart(written.high, beside.high)) return;
  fail_at(at, "temperature.pair",
          as_written(beside) + " is written beside a difference of " +
              told_difference({written, std::nullopt}) + ", and the two differ by more than " +
              exact_text(widest_pair) + " °F",
          "write one of the two; the other is added");
}

}  // namespace scalepan
