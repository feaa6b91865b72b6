#include "recipe/method.hpp"

#include <algorithm>
#include <utility>

#include "measure/amount.hpp"
#include "measure/nearest.hpp"
#include "measure/temperature_text.hpp"
#include "measure/unit_table.hpp"
#include "recipe/cursor.hpp"
#include "recipe/recipe.hpp"
#include "recipe/share_phrase.hpp"

namespace scalepan {

namespace {

/// A use before the rest of its line is settled.
struct OpenUse {
  std::size_t step = 0;
  std::size_t use = 0;
  std::optional<Rational> share;  // nothing: the rest
  const PlacedText* text = nullptr;
};

[[noreturn]] void fail_no_line(std::string_view name, std::size_t at,
                               const std::vector<Line>& lines) {
  std::vector<std::string_view> ids;
  for (const Line& line : lines) ids.push_back(line.id);
  const std::string near = nearest_hint(nearest_names(id_of_name(name), ids));
  fail_at(at, "method.line", "no line of the recipe has the id \"" + excerpt(name) + "\"",
          near.empty() ? "write the id of a line, or a share of it: 2/3 of olive_oil" : near);
}

class MethodReader {
 public:
  MethodReader(const std::vector<Line>& lines, Reading reading)
      : lines_(lines), reading_(reading), uses_(lines.size()) {}

  void read_step(const StepInput& input) {
    MethodStep step;
    if (trimmed(input.text.text).empty()) {
      fail("method.text", "a step of the method has no text", {}, input.text.place);
    }
    step.text = located(input.text.place, input.text.text,
                        [&] { return with_both_scales(input.text.text, reading_.decimal); });
    step.untold = untold_temperatures(input.text.text, reading_.decimal);
    for (const PlacedText& use : input.uses) {
      step.uses.push_back(located(use.place, use.text, [&] { return read_use(use, step); }));
    }
    if (!input.at.text.empty()) {
      step.at = located(input.at.place, input.at.text,
                        [&] { return parse_temperature(input.at.text, reading_.decimal); });
    }
    located(input.time.place, input.time.text, [&] { expect_time(input.time.text); });
    step.time = trimmed(input.time.text);
    step.each_load = input.each_load;
    steps_.push_back(std::move(step));
  }

  std::vector<MethodStep> settled() {
    for (std::size_t i = 0; i < lines_.size(); ++i) settle(i);
    return std::move(steps_);
  }

 private:
  StepUse read_use(const PlacedText& use, const MethodStep& step) {
    SharePhrase phrase;
    phrase.name = trimmed(use.text);
    // An id may look like a share, `half_of_it`.
    std::optional<std::size_t> line = line_called(phrase.name);
    if (!line) {
      if (auto read = read_share_phrase(use.text, reading_.decimal)) phrase = std::move(*read);
      line = line_called(phrase.name);
    }
    if (!line) fail_no_line(phrase.name, phrase.name_at, lines_);
    if (phrase.kind == ShareKind::portions || phrase.amount.sign() <= 0) {
      fail_at(0, "method.share", "\"" + excerpt(use.text) + "\" is no share of " + lines_[*line].id,
              "write 1/2 of " + lines_[*line].id + ", or rest of " + lines_[*line].id);
    }
    const bool rest = phrase.kind == ShareKind::rest;
    uses_[*line].push_back({steps_.size(), step.uses.size(),
                            rest ? std::nullopt : std::optional(phrase.amount), &use});
    return {*line, phrase.amount};
  }

  [[nodiscard]] std::optional<std::size_t> line_called(std::string_view name) const {
    if (name.starts_with("the ")) name.remove_prefix(4);
    for (const std::string& id : {std::string(name), id_of_name(name)}) {
      const auto found = std::ranges::find(lines_, id, &Line::id);
      if (found != lines_.end()) return static_cast<std::size_t>(found - lines_.begin());
    }
    return std::nullopt;
  }

  /// A misspelt unit is told by the nearest of times.
  [[nodiscard]] std::optional<Amount> read_time(std::string_view text, std::size_t& at) const {
    try {
      return read_amount(text, at, reading_.measures, UnitStyle::full);
    } catch (const Error& error) {
      if (error.code() != "unit.unknown") throw;
      const std::string_view word = first_word(text.substr(error.place().offset));
      throw Error(error.code(), error.message(), nearest_hint(nearest_units(word, true)),
                  error.place());
    }
  }

  void expect_time(std::string_view text) const {
    if (text.empty()) return;
    const std::string plain = with_plain_spaces(text);
    std::size_t at = 0;
    skip_spaces(plain, at);
    const auto amount = read_time(plain, at);
    skip_spaces(plain, at);
    const bool is_time = amount && amount->unit && amount->unit->dimension() == dimension::time() &&
                         amount->low.sign() > 0 && amount->high >= amount->low;
    if (is_time && at == plain.size()) return;
    fail_at(0, "method.time", "\"" + excerpt(text) + "\" is no time",
            "write 35 min, 30 to 35 min or 1 h 10 min; put other words into the step's text");
  }

  void settle(std::size_t line) {
    if (uses_[line].empty()) return;
    std::vector<std::optional<Rational>> parts;
    for (const OpenUse& use : uses_[line]) parts.push_back(use.share);
    const PlacedText& last = *uses_[line].back().text;
    const std::vector<Rational> shares =
        located(last.place, last.text, [&] { return settle_shares(parts, lines_[line].id); });
    for (std::size_t i = 0; i < shares.size(); ++i) {
      const OpenUse& use = uses_[line][i];
      steps_[use.step].uses[use.use].share = shares[i];
    }
  }

  const std::vector<Line>& lines_;
  Reading reading_;
  std::vector<std::vector<OpenUse>> uses_;  // by line
  std::vector<MethodStep> steps_;
};

void add_untold(const Recipe& recipe, const std::string& prefix, std::vector<std::string>& notes) {
  for (std::size_t i = 0; i < recipe.method().size(); ++i) {
    for (const std::string& untold : recipe.method()[i].untold) {
      notes.push_back(prefix + "step " + std::to_string(i + 1) + ": \"" + untold +
                      "\" is not told in both scales");
    }
  }
}

void add_to_check(const Recipe& recipe, const std::string& prefix,
                  std::vector<std::string>& notes) {
  add_untold(recipe, prefix, notes);
  std::vector<Rational> used(recipe.lines().size());
  bool any = false;
  for (const MethodStep& step : recipe.method()) {
    for (const StepUse& use : step.uses) {
      used[use.line] += use.share;
      any = true;
    }
  }
  std::string unused;
  bool several = false;
  for (std::size_t i = 0; any && i < used.size(); ++i) {
    const std::string id = prefix + recipe.lines()[i].id;
    if (used[i].is_zero()) {
      several = !unused.empty();
      unused += (several ? ", " : "") + id;
    } else if (!(used[i] == Rational(1))) {
      notes.push_back(id + ": the steps of the method use " + mixed_text(used[i]) + " of it");
    }
  }
  if (!unused.empty()) {
    notes.push_back(unused + ": no step of the method uses " + (several ? "them" : "it"));
  }
}

std::string listed(const std::vector<Rational>& sizes) {
  std::string list;
  for (std::size_t i = 0; i < sizes.size(); ++i) {
    const bool last = i + 1 == sizes.size();
    list += (i == 0 ? "" : last ? " and " : ", ") + exact_text(sizes[i]);
  }
  return list;
}

}  // namespace

std::vector<MethodStep> read_method(const std::vector<StepInput>& input,
                                    const std::vector<Line>& lines, Reading reading) {
  MethodReader reader(lines, reading);
  for (const StepInput& step : input) reader.read_step(step);
  return reader.settled();
}

Line part_of_line(const Line& line, const Rational& share) {
  Line part = line;
  part.amount = line.amount * share;
  part.amount_low = line.amount_low * share;
  part.exact = line.exact * share;
  part.preparation.clear();
  part.preparations.clear();
  part.note.clear();
  return part;
}

std::vector<std::string> method_to_check(const Recipe& recipe) {
  std::vector<std::string> notes;
  add_to_check(recipe, "", notes);
  for (const MadeBase& base : recipe.made_bases()) {
    add_to_check(*base.recipe, base.name + ".", notes);
  }
  return notes;
}

std::string times_remark(const Recipe& recipe) {
  const bool timed = std::ranges::any_of(recipe.method(),
                                         [](const MethodStep& step) { return !step.time.empty(); });
  if (!timed || recipe.is_tested()) return {};
  const std::vector<Rational>& tested = recipe.tested_at();
  if (tested.empty()) {
    return "times are as written for " + portions_text(recipe.serves()) +
           ", no tested size is stated, and they are not scaled";
  }
  const std::string sizes =
      tested.size() == 1 ? portions_text(tested.front()) : listed(tested) + " portions";
  return "times are those of the tested " + sizes + " and are not scaled";
}

std::string_view times_practice() {
  return "separate pieces take as long as one, big pots heat slower (common practice; Gisslen, "
         "Professional Cooking)";
}

}  // namespace scalepan
