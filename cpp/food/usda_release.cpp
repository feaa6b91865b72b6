#include "food/usda_release.hpp"

#include <algorithm>
#include <functional>
#include <optional>
#include <span>
#include <string_view>
#include <tuple>
#include <unordered_map>
#include <utility>
#include <vector>

#include "exact/number_text.hpp"
#include "exact/text.hpp"
#include "food/household_measure.hpp"
#include "measure/unit_text.hpp"

namespace scalepan {

namespace {

// FOOD_DES.txt: number, group, long and short description, common name, maker, survey, refuse
// description, refuse percent, scientific name and four factors.
constexpr std::size_t food_fields = 14;
// WEIGHT.txt: number, sequence, amount, description, grams, data points, deviation.
constexpr std::size_t weight_fields = 7;
// ABBREV.txt: its last five are two pairs of grams and measure, and refuse percent.
constexpr std::size_t abbrev_fields = 53;
constexpr std::size_t abbrev_first_grams = 48;

struct ReleaseFood {
  std::string_view number;
  std::string description;
  std::string refuse_text;
  std::optional<Rational> refuse;  // percent
  int line = 0;
  std::vector<HouseholdMeasure> measures;
  bool name_is_free = true;
};

class Reader {
 public:
  explicit Reader(const UsdaRelease& release) : release_(release) {}

  std::vector<ReleaseFood> read() {
    read_foods();
    release_.layout == WeightsLayout::weight ? read_weights() : read_abbrev();
    return std::move(foods_);
  }

 private:
  void read_foods() {
    CaretTable table(release_.foods, food_fields);
    while (table.next()) {
      ReleaseFood food;
      food.number = table.text(0);
      food.description = table.text(2);
      food.refuse_text = table.text(7);
      food.refuse = table.number(8);
      food.line = table.line();
      if (food.refuse && (food.refuse->sign() < 0 || *food.refuse >= 100)) {
        table.fail_in(8, "refuse is a percentage from 0 to below 100, but " +
                             exact_text(*food.refuse) + " is written");
      }
      if (!index_.emplace(food.number, foods_.size()).second) {
        table.fail_in(0, "the food " + std::string(food.number) + " is there twice");
      }
      foods_.push_back(std::move(food));
    }
  }

  void read_weights() {
    CaretTable table(release_.weights, weight_fields);
    while (table.next()) {
      HouseholdMeasure measure;
      measure.amount = positive(table, 2);
      measure.text = table.text(3);
      measure.grams = positive(table, 4);
      add(table, std::move(measure));
    }
  }

  void read_abbrev() {
    CaretTable table(release_.weights, abbrev_fields);
    while (table.next()) {
      for (std::size_t field = abbrev_first_grams; field < abbrev_first_grams + 4; field += 2) {
        // SR28 names a measure of 42063 and leaves its weight blank.
        if (table.text(field + 1).empty() || !table.number(field)) continue;
        HouseholdMeasure measure;
        std::tie(measure.amount, measure.text) = amount_and_text(table, field + 1);
        measure.grams = positive(table, field);
        add(table, std::move(measure));
      }
    }
  }

  /// `2 tbsp, chopped` as 2 and the rest.
  static std::pair<Rational, std::string> amount_and_text(const CaretTable& table,
                                                          std::size_t field) {
    const std::string_view text = table.text(field);
    std::size_t position = 0;
    std::optional<Rational> amount;
    try {
      amount = read_amount_number(text, position);
    } catch (const Error& error) {
      table.fail_in(field, error.message());
    }
    if (!amount || amount->sign() <= 0) {
      table.fail_in(field,
                    "a measure begins with its amount, but " + excerpt(text) + " is written");
    }
    return {*amount, std::string(trimmed(text.substr(position)))};
  }

  static Rational positive(const CaretTable& table, std::size_t field) {
    const auto number = table.number(field);
    if (!number || number->sign() <= 0) table.fail_in(field, "a number above zero belongs here");
    return *number;
  }

  void add(const CaretTable& table, HouseholdMeasure measure) {
    const auto found = index_.find(table.text(0));
    if (found == index_.end()) {
      table.fail_in(0, release_.foods.name + " has no food " + std::string(table.text(0)));
    }
    auto& measures = foods_[found->second].measures;
    measure.number = static_cast<int>(measures.size()) + 1;
    read_label(measure);
    measures.push_back(std::move(measure));
  }

  const UsdaRelease& release_;
  std::vector<ReleaseFood> foods_;
  std::unordered_map<std::string_view, std::size_t> index_;
};

/// Takes the bracket off a label where no other measure of its kind then reads the same.
void shorten_labels(std::vector<HouseholdMeasure>& measures) {
  std::vector<std::string> shortened;
  for (const HouseholdMeasure& measure : measures) {
    const std::string_view brief = without_bracket(measure.label);
    const bool alone = std::ranges::none_of(measures, [&](const HouseholdMeasure& other) {
      return &other != &measure && other.volume.has_value() == measure.volume.has_value() &&
             other.label != measure.label && without_bracket(other.label) == brief;
    });
    shortened.emplace_back(alone ? brief : measure.label);
  }
  for (std::size_t i = 0; i < measures.size(); ++i) measures[i].label = std::move(shortened[i]);
}

/// The facts of one food.
class FactMaker {
 public:
  FactMaker(const ReleaseFood& food, std::string id, const std::string& label)
      : food_(food),
        id_(std::move(id)),
        source_("USDA " + label + " " + std::string(food.number) + ", ") {}

  [[nodiscard]] std::vector<Fact> facts() const {
    std::vector<Fact> made;
    if (food_.refuse) made.push_back(edible());
    std::vector<bool> done(food_.measures.size());
    for (std::size_t i = 0; i < done.size(); ++i) {
      if (done[i] || food_.measures[i].is_weight) continue;
      std::vector<const HouseholdMeasure*> alike;
      for (std::size_t j = i; j < done.size(); ++j) {
        if (!same_thing(food_.measures[i], food_.measures[j])) continue;
        done[j] = true;
        alike.push_back(&food_.measures[j]);
      }
      made.push_back(measured(std::move(alike)));
    }
    return made;
  }

 private:
  static bool same_thing(const HouseholdMeasure& a, const HouseholdMeasure& b) {
    return !b.is_weight && a.volume.has_value() == b.volume.has_value() && a.label == b.label;
  }

  /// Grams for one coherent unit of volume, or for one piece.
  static Rational grams_each(const HouseholdMeasure& measure) {
    const Rational each = measure.grams / measure.amount;
    return measure.volume ? each / measure.volume->ratio() : each;
  }

  [[nodiscard]] Fact named(FactKind kind, Stage from, Stage to) const {
    Fact fact;
    fact.id = id_ + (kind == FactKind::edible ? ".edible" : "");
    fact.food = id_;
    fact.kind = kind;
    fact.from = from;
    fact.to = to;
    fact.source = source_;
    fact.layer = FactLayer::dataset;
    return fact;
  }

  [[nodiscard]] Fact edible() const {
    static const Unit share = parse_unit("EP/AP");
    Fact fact = named(FactKind::edible, Stage::as_purchased, Stage::edible);
    fact.value = Quantity((100 - *food_.refuse) / 100, share);
    fact.source += "refuse " + exact_text(*food_.refuse) + " %";
    if (!food_.refuse_text.empty()) fact.source += " (" + food_.refuse_text + ")";
    return fact;
  }

  /// One fact of the measures of one thing: the largest volume, or the first piece, is its value.
  [[nodiscard]] Fact measured(std::vector<const HouseholdMeasure*> alike) const {
    const auto size = [](const HouseholdMeasure* measure) {
      return measure->volume ? measure->amount * measure->volume->ratio() : Rational(1);
    };
    std::ranges::stable_sort(alike, std::ranges::greater(), size);
    const HouseholdMeasure& first = *alike.front();
    Fact fact = first.volume ? density(first) : piece(first);
    fact.source += first.told();
    const Unit unit = fact.value.unit();
    Rational low = grams_each(first);
    Rational high = low;
    for (const HouseholdMeasure* other : std::span(alike).subspan(1)) {
      low = std::min(low, grams_each(*other));
      high = std::max(high, grams_each(*other));
      fact.source += "; spread: " + other->told();
    }
    fact.value = Quantity::of_coherent(grams_each(first), unit);
    if (alike.size() > 1) {
      fact.low = Quantity::of_coherent(std::move(low), unit);
      fact.high = Quantity::of_coherent(std::move(high), unit);
    }
    return fact;
  }

  [[nodiscard]] Fact density(const HouseholdMeasure& measure) const {
    static const Unit gram = Unit::named("g");
    const bool nothing_refused = food_.refuse && food_.refuse->is_zero();
    const Stage stage = nothing_refused ? Stage::none : Stage::edible;
    Fact fact = named(FactKind::density, stage, stage);
    fact.id += ".density." + std::to_string(measure.number);
    fact.state = measure.label;
    const Unit unit({gram.parts().front(), {measure.volume->parts().front().first, -1}});
    fact.value = Quantity(1, unit);
    return fact;
  }

  [[nodiscard]] Fact piece(const HouseholdMeasure& measure) const {
    static const Unit each = parse_unit("g EP/(piece AP)");
    Fact fact = named(FactKind::piece, Stage::as_purchased, Stage::edible);
    fact.id += ".piece." + std::to_string(measure.number);
    fact.size = measure.label;
    fact.value = Quantity(1, each);
    return fact;
  }

  const ReleaseFood& food_;
  std::string id_;
  std::string source_;
};

/// The plain label where there is one, else the first.
std::string default_label(const std::vector<HouseholdMeasure>& measures, bool volumes) {
  const HouseholdMeasure* first = nullptr;
  for (const HouseholdMeasure& measure : measures) {
    if (measure.is_weight || measure.volume.has_value() != volumes) continue;
    if (measure.label.empty()) return {};
    if (first == nullptr) first = &measure;
  }
  return first == nullptr ? std::string() : first->label;
}

void add_food(Catalog& catalog, ReleaseFood& read, const UsdaRelease& release) {
  shorten_labels(read.measures);
  const std::string id = lower(release.label) + "_" + std::string(read.number);
  Food food;
  food.id = id;
  food.name = food.plural = read.description;
  food.default_state = default_label(read.measures, true);
  food.default_size = default_label(read.measures, false);
  catalog.add(std::move(food));
  if (read.name_is_free) {
    catalog.add(FoodName{read.description, read.description, {}, id, false});
  }
  for (Fact& fact : FactMaker(read, id, release.label).facts()) catalog.add(std::move(fact));
}

}  // namespace

void add_release(Catalog& catalog, const UsdaRelease& release) {
  std::vector<ReleaseFood> foods = Reader(release).read();
  // Looked up before any is added: two foods of the release may share a name, and then it is asked.
  for (ReleaseFood& food : foods) food.name_is_free = !catalog.has_name(food.description);
  for (ReleaseFood& food : foods) {
    located(Place{release.foods.name, food.line, 0, {}}, {},
            [&] { add_food(catalog, food, release); });
  }
}

}  // namespace scalepan
