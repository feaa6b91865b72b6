#include "recipe/base_line.hpp"

#include <algorithm>
#include <utility>

#include "measure/nearest.hpp"
#include "recipe/cursor.hpp"
#include "recipe/line_text.hpp"
#include "recipe/share_phrase.hpp"
#include "recipe/written_line.hpp"

namespace scalepan {

namespace {

bool begins_with_rest(std::string_view text) {
  Cursor cursor(text);
  cursor.take_word("the");
  return cursor.take_word("rest");
}

/// Also one in the plural: `2 pancakes` of the base `pancake`.
bool same_name(std::string_view a, std::string_view b) {
  if (a.size() > b.size()) std::swap(a, b);
  return b.starts_with(a) && (b.size() == a.size() || b.substr(a.size()) == "s");
}

std::optional<std::size_t> base_called(const std::vector<BaseRecipe>& bases,
                                       std::string_view name) {
  std::string wanted = spoken(name);
  if (wanted.starts_with("the ")) wanted.erase(0, 4);
  const auto index = [&](const auto& called) -> std::optional<std::size_t> {
    const auto found = std::ranges::find_if(bases, called);
    if (found == bases.end()) return std::nullopt;
    return static_cast<std::size_t>(found - bases.begin());
  };
  const auto exactly = [&](const BaseRecipe& base) { return wanted == spoken(base.name); };
  if (const auto known = index(exactly)) return known;
  return index([&](const BaseRecipe& base) {
    return same_name(wanted, spoken(base.name)) ||
           same_name(wanted, plain_name(base.recipe->name()));
  });
}

std::string nearest_base(const std::vector<BaseRecipe>& bases, std::string_view name) {
  std::vector<std::string> names;
  for (const BaseRecipe& base : bases) names.push_back(spoken(base.name));
  const std::vector<std::string_view> views(names.begin(), names.end());
  return nearest_hint(nearest_names(spoken(name), views));
}

[[noreturn]] void fail_unknown(const std::vector<BaseRecipe>& bases, const SharePhrase& phrase) {
  const std::string near = nearest_base(bases, phrase.name);
  fail_at(phrase.name_at, "base.unknown", "no base is called \"" + excerpt(phrase.name) + "\"",
          near.empty() ? "name its recipe: bases = { sauce = \"sauce.toml\" }" : near);
}

/// The whole of a written base, in what its amounts are told in.
Quantity whole_of(const Recipe& base) {
  if (auto amount = base.batch().amount(base.size())) return *amount;
  return {base.serves(), Unit::named("portion")};
}

/// One written base in the kind of an amount; nothing where the base does not state it.
std::optional<Quantity> whole_in(const Recipe& base, Dimension kind) {
  if (kind == dimension::portion()) return Quantity(base.serves(), Unit::named("portion"));
  for (const auto& whole : {base.batch().weight(base.size()), base.batch().amount(base.size())}) {
    if (whole && whole->dimension() == kind) return whole;
  }
  return std::nullopt;
}

class BaseLineReader {
 public:
  BaseLineReader(const LineInput& input, Reading reading, const std::vector<BaseRecipe>& bases)
      : input_(input), reading_(reading), bases_(bases) {}

  std::optional<Line> by_share() {
    const std::string_view text = before_rule();
    const auto phrase = read_share_phrase(text, reading_.decimal);
    if (!phrase) return std::nullopt;
    const std::size_t mark = std::min(phrase->name.find_first_of(",(;"), phrase->name.size());
    line_.base = base_called(bases_, trimmed(std::string_view(phrase->name).substr(0, mark)));
    if (!line_.base) {
      if (phrase->kind == ShareKind::rest) fail_unknown(bases_, *phrase);
      return std::nullopt;
    }
    if (mark < phrase->name.size()) line_.preparation = beside(phrase->name.substr(mark));
    if (same_word(line_.preparation, "optional")) {
      line_.optional = true;
      line_.preparation.clear();
    }
    if (phrase->amount.sign() <= 0) {
      fail_at(0, "line.amount", "an amount must be above zero");
    }
    if (phrase->kind == ShareKind::portions) {
      line_.written = Quantity(phrase->amount, Unit::named("portion"));
    } else {
      expect_scales_with_dish(text.size());
      line_.takes_share = true;
      if (phrase->kind == ShareKind::share) line_.share = phrase->amount;
    }
    finish(phrase->kind == ShareKind::rest ? "rest_of_" : "");
    read_rule(before_rule().size());
    return std::move(line_);
  }

  std::optional<Line> by_amount(const Catalog& catalog) {
    const WrittenLine written = read_written_line(input_.line.text, reading_, catalog);
    if (written.kind != LineKind::ingredient || written.foods.empty()) return std::nullopt;
    // As a whole, since a base may be called `herbs and butter`.
    const auto base = base_called(bases_, written.food());
    if (!base) {
      expect_no_near_base(written, catalog);
      return std::nullopt;
    }
    line_ = line_from(written, input_, reading_, catalog);
    line_.base = base;
    line_.food_id.clear();
    line_.near = line_.several = false;
    const auto plain = [](const Quantity& q) {
      return Quantity::of_coherent(q.coherent(), q.unit().without_stages());
    };
    line_.written = plain(line_.written);
    line_.written_low = plain(line_.written_low);
    expect_measured(written);
    finish("");
    return std::move(line_);
  }

 private:
  /// A food that nobody knows, with a name near that of a base.
  void expect_no_near_base(const WrittenLine& written, const Catalog& catalog) const {
    const std::string name = written.food();
    if (catalog.has_name(name) || catalog.food(name) != nullptr) return;
    if (nearest_base(bases_, name).empty()) return;
    fail_unknown(bases_, {ShareKind::share, 1, name, written.food_at});
  }

  /// `warm, strained` of `, warm, strained` and of ` (warm), strained`.
  static std::string beside(std::string text) {
    std::erase_if(text, [](char c) { return c == '(' || c == ')'; });
    const std::size_t start = text.find_first_not_of(",; ");
    return start == std::string::npos ? "" : std::string(trimmed(text.substr(start)));
  }

  [[nodiscard]] std::string_view before_rule() const {
    const std::string_view text = input_.line.text;
    return text.substr(0, text.find('|'));
  }

  /// A share is of the base as the dish makes it, so it cannot go by another rule than the rest.
  void expect_scales_with_dish(std::size_t bar) const {
    const bool in_text = bar < input_.line.text.size();
    if (!in_text && input_.rule.text.empty()) return;
    constexpr std::string_view message = "a share of a base scales with the dish, by no other rule";
    constexpr std::string_view hint = "write an amount where it must scale otherwise";
    if (in_text) fail_at(bar, "base.rule", std::string(message), std::string(hint));
    fail("base.rule", std::string(message), std::string(hint), input_.rule.place);
  }

  void read_rule(std::size_t bar) {
    const std::string_view text = input_.line.text;
    if (bar < text.size() && !input_.rule.text.empty()) {
      fail("line.rule", "the line has a rule in its text and another beside it", {},
           input_.rule.place);
    }
    const auto parse = [&](std::string_view rule) {
      return parse_rule(rule, line_.written.unit(), reading_.measures);
    };
    if (bar < text.size()) {
      line_.rule = at_offset(bar + 1, [&] { return parse(text.substr(bar + 1)); });
    } else if (!input_.rule.text.empty()) {
      line_.rule =
          located(input_.rule.place, input_.rule.text, [&] { return parse(input_.rule.text); });
    }
  }

  void expect_measured(const WrittenLine& written) const {
    const BaseRecipe& base = bases_[*line_.base];
    const std::string share = "take a share: 1/2 of the " + spoken(base.name);
    if (!line_.measured) {
      fail_at(written.food_at, "line.no_amount",
              "it is not written how much the line takes of the base " + base.name,
              "write an amount, or " + share);
    }
    const Dimension kind = line_.written.dimension();
    if (whole_in(*base.recipe, kind)) return;
    fail_at(written.unit_at, "base.measure",
            "the line takes " + line_.written.text() + " of " + base.name +
                ", but its recipe does not say how much it makes in " + kind.name(),
            "state it there: makes = \"...\", or " + share);
  }

  void finish(std::string_view lead) {
    const BaseRecipe& base = bases_[*line_.base];
    for (const PlacedText* extra : {&input_.stage, &input_.state}) {
      if (extra->text.empty()) continue;
      fail("base.extras",
           "\"" + excerpt(extra->text) + "\" is said of " + base.name +
               ", which is a base and has no stage or state",
           {}, extra->place);
    }
    line_.text = input_.line.text;
    line_.place = input_.line.place;
    line_.food = spoken(base.name);
    line_.item_key.clear();
    line_.id = input_.id.text.empty() ? std::string(lead) + id_of_name(line_.food) : input_.id.text;
    if (!input_.note.empty()) line_.note = input_.note;
    line_.optional = line_.optional || input_.optional;
    if (!line_.takes_share) set_amounts(line_);
  }

  static void set_amounts(Line& line) {
    if (!line.is_range()) line.written_low = line.written;
    line.exact = line.amount = line.written;
    line.amount_low = line.written_low;
  }

  const LineInput& input_;
  Reading reading_;
  const std::vector<BaseRecipe>& bases_;
  Line line_;
};

/// The uses of one base: shares as they are, amounts as shares of one batch, the rest as nothing.
std::vector<std::optional<Rational>> parts_of(const std::vector<Line*>& uses,
                                              const BaseRecipe& base) {
  std::vector<std::optional<Rational>> parts;
  for (const Line* line : uses) {
    parts.push_back(line->takes_share ? line->share : std::optional(batches_of(*line, base)));
  }
  return parts;
}

void give_share(Line& line, const BaseRecipe& base, const Rational& share) {
  const bool rest = !line.share.has_value();
  const std::string text = mixed_text(share);
  line.share = share;
  line.written = line.written_low = line.exact = line.amount = line.amount_low =
      whole_of(*base.recipe) * share;
  const std::string note = rest ? "the rest, " + text + " of each batch" : text + " of each batch";
  line.note = line.note.empty() ? note : note + ", " + line.note;
}

UnitWeight weight_of_base_unit(const Line& line, const BaseRecipe& base) {
  const auto weight = base.recipe->batch().weight(base.recipe->size());
  if (!weight) return std::nullopt;
  const auto whole = whole_in(*base.recipe, line.written.dimension());
  return weight->coherent() / whole->coherent() * line.rule.taken_up;
}

void settle_base(const std::vector<Line*>& uses, const BaseRecipe& base) {
  const bool shared = std::ranges::any_of(uses, &Line::takes_share);
  if (!shared) return;
  const Line& last = *uses.back();
  const std::vector<Rational> shares = located(
      last.place, last.text, [&] { return settle_shares(parts_of(uses, base), base.name); });
  for (std::size_t i = 0; i < uses.size(); ++i) {
    if (uses[i]->takes_share) give_share(*uses[i], base, shares[i]);
  }
}

}  // namespace

std::string spoken(std::string_view name) {
  std::string text(name);
  std::ranges::replace(text, '_', ' ');
  return plain_name(text);
}

std::optional<Line> read_base_share(const LineInput& input, Reading reading,
                                    const std::vector<BaseRecipe>& bases) {
  const bool readable = input.line.text.size() <= longest_line;  // else the line reader refuses it
  const bool may_take = !bases.empty() || begins_with_rest(input.line.text);
  if (!readable || !may_take) return std::nullopt;
  return BaseLineReader(input, reading, bases).by_share();
}

std::optional<Line> read_base_amount(const LineInput& input, Reading reading,
                                     const std::vector<BaseRecipe>& bases, const Catalog& catalog) {
  if (bases.empty() || input.line.text.size() > longest_line) return std::nullopt;
  return BaseLineReader(input, reading, bases).by_amount(catalog);
}

void settle_base_lines(std::vector<Line>& lines, const std::vector<BaseRecipe>& bases) {
  for (std::size_t i = 0; i < bases.size(); ++i) {
    std::vector<Line*> uses;
    for (Line& line : lines) {
      if (line.base == i && (line.measured || line.takes_share)) uses.push_back(&line);
    }
    if (!uses.empty()) settle_base(uses, bases[i]);
  }
}

Rational batches_of(const Line& line, const BaseRecipe& base) {
  const auto whole = whole_in(*base.recipe, line.written.dimension());
  return line.amount.coherent() / whole->coherent();
}

UnitWeight weight_in_batch(const Line& line, const std::vector<BaseRecipe>& bases,
                           const Catalog& catalog) {
  if (line.measured && line.rule.taken_up.is_zero()) return Rational(0);
  return line.base ? weight_of_base_unit(line, bases[*line.base]) : weight_of_unit(line, catalog);
}

}  // namespace scalepan
