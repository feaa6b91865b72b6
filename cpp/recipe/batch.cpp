#include "recipe/batch.hpp"

#include <utility>

#include "exact/number_text.hpp"
#include "food/convert.hpp"
#include "measure/amount.hpp"
#include "measure/told.hpp"
#include "recipe/batch_text.hpp"

namespace scalepan {

namespace {

bool is_weight(const Quantity& q) { return q.dimension() == dimension::mass(); }

/// To the weight that goes into the batch.
std::optional<Conversion> to_weight_used(const Line& line, const Food& food,
                                         const Catalog& catalog) {
  const Form from{kind_of(line.written.dimension().without_stages()), line.written.stage(),
                  line.detail()};
  if (line.drained_later()) {
    return find_conversion(catalog, food, from, {Kind::mass, Stage::drained, {}},
                           line.preparations);
  }
  const bool raw = from.stage == Stage::as_purchased || from.stage == Stage::edible;
  const Form to{Kind::mass, raw ? Stage::edible : from.stage, {}};
  if (auto how = find_conversion(catalog, food, from, to, line.preparations)) return how;
  Form whole = from;
  whole.stage = to.stage;
  return find_conversion(catalog, food, whole, to, line.preparations);
}

}  // namespace

UnitWeight weight_of_unit(const Line& line, const Catalog& catalog) {
  if (!line.measured) return std::nullopt;
  // Of a part the weight of the whole says nothing.
  if (!line.part.empty()) {
    const bool known =
        line.part_of_one && line.part_of_one->dimension().without_stages() == dimension::mass();
    return known ? UnitWeight(line.part_of_one->coherent() * line.rule.taken_up) : std::nullopt;
  }
  const Food* food = catalog.food(line.food_id);
  if (food == nullptr) {
    const bool weighed =
        !line.drained_later() && line.written.dimension().without_stages() == dimension::mass();
    return weighed ? UnitWeight(line.rule.taken_up) : std::nullopt;
  }
  const auto how = to_weight_used(line, *food, catalog);
  return how ? UnitWeight(how->factor * line.rule.taken_up) : std::nullopt;
}

Batch::Batch(const BatchInput& input, const std::vector<Line>& lines,
             const std::vector<UnitWeight>& weights, const Rational& serves, Measures measures)
    : serves_(serves) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Line& line = lines[i];
    if (!line.measured) continue;
    if (!weights[i]) unweighed_.push_back(line.id);
    const Rational grams = weights[i].value_or(Rational(0));
    parts_.push_back({line.rule, line.written.coherent(), grams});
    if (line.rule.kind == RuleKind::per_load) {
      grams_each_load_ += grams * amount_by_rule(line.rule, line.written.coherent(), {}).amount;
    }
  }
  written_grams_ = grams_at(written_size());
  read_loss(input.loss);
  read_makes(input.makes, measures);
  read_load(input, measures);
  // Behind the load, since the lines by the load are in what was measured.
  if (makes_ && is_weight(*makes_) && follows_weight()) {
    kept_ = makes_->coherent() / grams_with_loads(written_size());
  }
}

void Batch::read_makes(const PlacedText& text, Measures measures) {
  if (text.text.empty()) return;
  makes_ = located(text.place, text.text, [&] { return parse_makes(text.text, measures); });
  if (makes_->dimension() == dimension::portion() && !(makes_->coherent() == serves_)) {
    fail("batch.makes",
         "the recipe serves " + exact_text(serves_) + ", but makes " +
             exact_text(makes_->coherent()) + " portions",
         "state a weight, a volume or pieces", text.place);
  }
  if (!is_weight(*makes_) || !follows_weight()) return;
  if (!(kept_ == Rational(1))) {
    fail("batch.makes",
         "both what the recipe makes (" + makes_->text() + ") and its loss are stated",
         "state one of the two", text.place);
  }
}

void Batch::read_loss(const PlacedText& text) {
  if (text.text.empty()) return;
  loss_stated_ = true;
  kept_ = located(text.place, text.text, [&] { return parse_loss(text.text); });
}

void Batch::read_load(const BatchInput& input, Measures measures) {
  const PlacedText& text = input.load;
  if (text.text.empty()) return;
  located(text.place, text.text, [&] {
    if (const auto trays = parse_trays(text.text)) {
      load_ = Load{LoadBy::factor, *trays / input.trays, Quantity(*trays)};
      return;
    }
    const Quantity capacity = parse_capacity(text.text, measures);
    load_ = capacity.dimension() == dimension::portion()
                ? Load{LoadBy::factor, capacity.coherent() / serves_, capacity}
                : load_of_measure(capacity);
  });
}

Batch::Load Batch::load_of_measure(const Quantity& capacity) const {
  const bool by_weight = follows_weight() && !written_grams_.is_zero();
  // Where more comes out than the lines weigh, as of water that none of them names, the pan holds
  // what comes out.
  const bool swells =
      makes_ && is_weight(*makes_) && makes_->coherent() > written_grams_ + grams_each_load_;
  if (is_weight(capacity) && by_weight && !swells) {
    const Rational room = capacity.coherent() - grams_each_load_;
    if (room.sign() <= 0) {
      fail_at(0, "batch.load",
              "a load takes " + capacity.text() + ", and the lines by the load alone weigh " +
                  Quantity::of_coherent(grams_each_load_, capacity.unit()).text());
    }
    return {LoadBy::weight, room, capacity, true};
  }
  if (!makes_ || !(makes_->dimension() == capacity.dimension())) {
    const bool count = capacity.dimension() == dimension::piece();
    fail_at(0, "batch.load",
            "a load takes " + tell(capacity).text + ", but how much the recipe makes in " +
                capacity.dimension().name() + " is not known",
            (count ? "write \"" + exact_text(capacity.coherent()) + " portions\", or " : "") +
                std::string("state it: makes = \"...\""));
  }
  if (!by_weight) {
    return {LoadBy::factor, capacity.coherent() / makes_->coherent(), capacity};
  }
  return {LoadBy::weight, capacity.coherent() * written_grams_ / makes_->coherent(), capacity};
}

Rational Batch::grams_at(const Size& size) const {
  Rational grams;
  for (const Part& part : parts_) {
    if (part.rule.kind == RuleKind::per_load) continue;
    grams += amount_by_rule(part.rule, part.written, size).amount * part.grams;
  }
  return grams;
}

/// What the number of loads follows.
Rational Batch::course_of_loads(const Size& size) const {
  return load_->by == LoadBy::factor ? size.factor : grams_at(size);
}

Rational Batch::loads_at(const Size& size) const {
  return load_ ? ceil(course_of_loads(size) / load_->width) : Rational(1);
}

std::optional<Loads> Batch::loads(const Size& size, LoadSplit split) const {
  if (!load_) return std::nullopt;
  const Quantity& capacity = load_->capacity;
  Quantity total = capacity * (course_of_loads(size) / load_->width);
  // The lines by the load take their room in each.
  if (load_->of_lines) total = *before_cooking(size);
  const Dimension kind = capacity.dimension();
  const bool counted =
      kind.is_number() || kind == dimension::piece() || kind == dimension::portion();
  if (counted) total = Quantity::of_coherent(ceil(total.coherent()), capacity.unit());
  return loads_of(total, capacity, split);
}

Rational Batch::grams_with_loads(const Size& size) const {
  return grams_at(size) + grams_each_load_ * loads_at(size);
}

std::optional<Quantity> Batch::before_cooking(const Size& size) const {
  if (!weighed()) return std::nullopt;
  return Quantity(grams_with_loads(size), Unit::named("g"));
}

bool Batch::tells_weight() const {
  if (!makes_ || loss_stated_) return true;
  return is_weight(*makes_) || makes_->dimension() == dimension::portion();
}

std::optional<Quantity> Batch::weight(const Size& size) const {
  if (makes_ && is_weight(*makes_) && !follows_weight()) return *makes_ * size.factor;
  if (!tells_weight()) return std::nullopt;
  if (const auto before = before_cooking(size)) return *before * kept_;
  return std::nullopt;
}

std::optional<Quantity> Batch::amount(const Size& size) const {
  if (!makes_ || is_weight(*makes_)) return weight(size);
  if (!follows_weight()) return *makes_ * size.factor;
  return *makes_ * (grams_with_loads(size) / grams_with_loads(written_size()));
}

Growth Batch::growth_without_loads(const Growing& growing) const {
  Growth growth;
  for (const Part& part : parts_) {
    add_growth(growth, part.rule, part.written, part.grams, growing);
  }
  return growth;
}

void Batch::add_load_growth(Growth& growth, const Rational& each, const Growing& growing) const {
  if (each.is_zero()) return;
  if (!load_) return growth.add_constant(each);
  if (load_->by == LoadBy::factor) return growth.add_steps(each, Rational(1) / load_->width);
  growth.add_steps_of(each, growth_without_loads(growing), load_->width);
}

Growth Batch::growth_before(const Growing& growing) const {
  Growth growth = growth_without_loads(growing);
  add_load_growth(growth, grams_each_load_, growing);
  return growth;
}

Batch::Course Batch::course_of(const Quantity& target, bool before, const Growing& growing) const {
  if (is_weight(target) && follows_weight() && (before || tells_weight())) {
    return {growth_before(growing), before ? Rational(1) : kept_};
  }
  if (before || !makes_ || !(makes_->dimension() == target.dimension())) fail_unknown(target);
  if (follows_weight()) {
    return {growth_before(growing), makes_->coherent() / grams_with_loads(written_size())};
  }
  Growth factor;
  factor.add_slope(1);
  return {std::move(factor), makes_->coherent()};
}

void Batch::fail_unknown(const Quantity& target) const {
  std::string missing = "the recipe does not say how much it makes in " + target.dimension().name();
  std::string hint = "state it: makes = \"...\"";
  if (is_weight(target) && !weighed()) {
    std::string ids;
    for (const std::string& id : unweighed_) ids += (ids.empty() ? "" : ", ") + id;
    missing = "the weight of the batch is not known, since no fact gives the weight of: " + ids;
    hint += ", or add facts of your own";
  } else if (is_weight(target) && !tells_weight()) {
    missing = "how much the " + makes_->text() + " that the recipe makes weigh is not known";
    hint = "state what it makes by weight, or its loss: loss = \"12 % of the raw batch\"";
  }
  fail("batch.unknown", missing, hint);
}

}  // namespace scalepan
