#include "costing/curve.hpp"

#include <algorithm>
#include <utility>

#include "costing/curve_by_sheet.hpp"
#include "exact/error.hpp"
#include "exact/number_text.hpp"

namespace scalepan {

namespace {

WordColumn in_words(const std::vector<Rational>& till) {
  if (auto column = column_of(till)) return std::move(*column);
  fail("cost.column", "the till in its least common step does not fit 64 bits",
       "take it as a list of fractions");
}

constexpr std::size_t points_a_pulse = 256;

/// One item on its way along the points.
struct Under {
  const ItemCourse* item;
  Stretch stretch;
  Costs a_point;
};

Costs operator-(const Costs& costs) { return costs * Rational(-1); }

/// The four costs of all items from point to point: of straight items what they change by is
/// added, and only where a cover ends it is looked up again.
class CostSweep {
 public:
  explicit CostSweep(const std::vector<ItemCourse>& items) {
    for (const ItemCourse& item : items) {
      (item.has_straight_costs() ? straight_ : bent_).push_back({&item, {}, {}});
    }
  }

  /// Points are to be asked for in order, from 0 on.
  Costs at(std::size_t place) {
    sum_ += a_point_;
    for (Under& under : straight_) {
      if (place == 0 || under.stretch.last < place) move_on(under, place);
    }
    Costs costs = sum_;
    for (Under& under : bent_) {
      if (place == 0 || under.stretch.last < place) {
        under.stretch = under.item->stretch_from(place);
      }
      costs += under.item->costs_at(place, under.stretch);
    }
    return costs;
  }

 private:
  void move_on(Under& under, std::size_t place) {
    // Differences of one item are small fractions, sums over all of them are not.
    Costs more;
    Costs more_a_point = -under.a_point;
    if (place > 0) more = -under.item->costs_at(place, under.stretch);
    under.stretch = under.item->stretch_from(place);
    under.a_point = under.item->costs_a_point(under.stretch);
    more += under.item->costs_at(place, under.stretch);
    more_a_point += under.a_point;
    sum_ += more;
    a_point_ += more_a_point;
  }

  std::vector<Under> straight_;
  std::vector<Under> bent_;
  Costs sum_;      // of the straight items
  Costs a_point_;  // what it changes by
};

std::vector<ItemCost> items_on_curve(const Costing& costing, const Rational& portions) {
  try {
    return items_at(costing, portions);
  } catch (const Error& error) {
    if (!tells_too_little(error)) throw;
    fail(error.code(), "at " + exact_text(portions) + " portions: " + error.message(), error.hint(),
         error.place());
  }
}

}  // namespace

void expect_by_portions(const Recipe& recipe) {
  const Size& size = recipe.size();
  if (size.served == size.portions && size.portions == recipe.serves() * size.factor) return;
  fail("cost.curve",
       recipe.name() +
           " is at a size that portions alone do not give: portions of another size, "
           "spare ones, or a serving loss",
       "ask for the curve of the recipe at portions as they are written");
}

void expect_curve_points(std::size_t count) {
  if (count <= most_curve_points) return;
  fail("cost.curve",
       "a curve of more than " + std::to_string(most_curve_points) + " points is asked for");
}

Curve::Curve(const Costing& costing, CurvePoints points, Pulse pulse)
    : costing_(costing), points_(std::move(points)), pulse_(std::move(pulse)) {
  expect_by_portions(costing_.recipe());
  unpriced_ = costing_.unpriced();
  expect_curve_points(points_.size());
  if (costing_.is_changed()) {
    take_from_sheet();
    return;
  }
  find_needs();
  expect_reachable();
  kernel_ = till_kernel(items_, points_, costing_.plan().money());
}

Curve::Curve(const Costing& costing, CurvePoints points, CurveRecord record)
    : costing_(costing),
      points_(std::move(points)),
      unpriced_(std::move(record.unpriced)),
      even_(std::move(record.even)),
      lists_(Lists{std::move(record.till), std::move(record.used), std::move(record.thrown),
                   std::move(record.borne)}),
      breakpoints_(std::move(record.breakpoints)) {
  kernel_.text = std::move(record.kernel);
}

std::optional<CurveRecord> Curve::record() const {
  if (!even_) return std::nullopt;
  return CurveRecord{lists_->till,  lists_->used, lists_->thrown, lists_->borne,
                     *breakpoints_, *even_,       unpriced_,      kernel_.text};
}

std::string Curve::currency() const { return costing_.plan().money().symbol(); }

void Curve::pulse(std::size_t turn) const {
  if (pulse_ && turn % points_a_pulse == 0) pulse_();
}

void Curve::take_from_sheet() {
  const SheetCurve curve = curve_by_sheet(costing_, points_, [this](std::size_t i) { pulse(i); });
  kernel_.text = "the sheet, point by point, since figures are changed";
  unpriced_ = costing_.now()->unpriced();
  lists_.emplace();
  breakpoints_.emplace();
  std::vector<CountRuns> even(curve.items.size());
  for (std::size_t place = 0; place < curve.points.size(); ++place) {
    const SheetPoint& point = curve.points[place];
    lists_->till.push_back(point.costs.till);
    lists_->used.push_back(point.costs.used);
    lists_->thrown.push_back(point.costs.thrown);
    lists_->borne.push_back(point.borne);
    for (std::size_t i = 0; i < curve.items.size(); ++i) {
      if (point.even[i]) even[i].add(points_[place]);
      if (place == 0 || point.packs[i] == curve.points[place - 1].packs[i]) continue;
      breakpoints_->push_back(
          {points_[place], curve.items[i], curve.points[place - 1].packs[i], point.packs[i]});
    }
  }
  even_.emplace();
  for (std::size_t i = 0; i < even.size(); ++i) even_->push_back({curve.items[i], even[i].runs()});
}

void Curve::find_needs() {
  const Recipe& recipe = costing_.recipe();
  std::vector<std::vector<Rational>> found;
  if (!bases_in_proportion(recipe)) found = needs_by_recipe();
  std::size_t number = 0;
  std::size_t plans = 0;
  for (const ItemPlan& plan : costing_.plan().items()) {
    std::vector<GroupNeeds> needs;
    for (const OfferGroup& group : plan.groups) {
      auto course = need_course(group, recipe, points_.even() ? Portions::whole : Portions::any);
      if (course) {
        needs.emplace_back(std::move(*course));
      } else {
        needs.emplace_back(std::move(found[number]));
      }
      ++number;
    }
    const bool priced = costing_.items()[plans++].group != nullptr;
    if (needs.empty() || !priced) continue;
    items_.emplace_back(plan, std::move(needs), points_, costing_.plan().money());
  }
  end_ = end_of_tapers(recipe);
}

/// Of all groups of all items, at every point.
std::vector<std::vector<Rational>> Curve::needs_by_recipe() const {
  std::vector<const OfferGroup*> groups;
  for (const ItemPlan& plan : costing_.plan().items()) {
    for (const OfferGroup& group : plan.groups) groups.push_back(&group);
  }
  std::vector<std::vector<Rational>> found(groups.size());
  for (std::size_t place = 0; place < points_.size(); ++place) {
    pulse(place);
    const Recipe sized = costing_.recipe().scaled(points_[place]);
    for (std::size_t i = 0; i < groups.size(); ++i) {
      found[i].push_back(need_of(*groups[i], sized.food_lines()));
    }
  }
  return found;
}

bool Curve::is_reachable(std::size_t place) const {
  const Rational portions = points_[place];
  if (portions.sign() <= 0 || (end_ && portions > *end_)) return false;
  return std::ranges::all_of(items_,
                             [&](const ItemCourse& item) { return item.can_be_bought(place); });
}

/// The first point that cannot be costed fails as its costing does.
void Curve::expect_reachable() const {
  std::size_t first = 0;
  std::size_t last = points_.size();
  if (points_.even()) {
    // What a larger batch needs is no less, so that all points behind the first one fail.
    if (last == 0 || is_reachable(last - 1)) return;
    while (first < last) {
      const std::size_t middle = first + (last - first) / 2;
      if (is_reachable(middle)) {
        first = middle + 1;
      } else {
        last = middle;
      }
    }
  } else {
    while (first < last && is_reachable(first)) pulse(first++);
    if (first == last) return;
  }
  static_cast<void>(items_on_curve(costing_, points_[first]));
}

const Curve::Lists& Curve::lists() const {
  const std::scoped_lock lock(mutex_);
  if (!lists_) lists_ = make_lists();
  return *lists_;
}

Curve::Lists Curve::make_lists() const {
  Lists lists;
  CostSweep sweep(items_);
  for (std::size_t place = 0; place < points_.size(); ++place) {
    pulse(place);
    Costs costs = sweep.at(place);
    lists.borne.push_back(costs.borne());
    lists.till.push_back(std::move(costs.till));
    lists.used.push_back(std::move(costs.used));
    lists.thrown.push_back(std::move(costs.thrown));
  }
  return lists;
}

const std::vector<Rational>& Curve::cost(std::string_view which) const {
  static_cast<void>(cost_named({}, which));
  if (which == "till" && kernel_.sum) return till_of_column();
  const Lists& all = lists();
  if (which == "till") return all.till;
  if (which == "used") return all.used;
  return which == "thrown" ? all.thrown : all.borne;
}

std::shared_ptr<WordColumn> Curve::column(std::string_view which) const {
  static_cast<void>(cost_named({}, which));
  if (which != "till") {
    fail("cost.column", std::string(which) + " does not go in whole steps of money",
         "only the till does; " + std::string(which) + " is a list of fractions");
  }
  const std::vector<Rational>* till = kernel_.sum ? nullptr : &cost("till");
  const std::scoped_lock lock(mutex_);
  if (!column_) {
    column_ = std::make_shared<WordColumn>(till == nullptr ? column_in_words() : in_words(*till));
  }
  return column_;
}

const std::vector<Rational>& Curve::till_of_column() const {
  const auto steps = column("till");
  const std::scoped_lock lock(mutex_);
  if (!till_) {
    till_.emplace();
    for (std::size_t i = 0; i < steps->size; ++i) till_->push_back(figure_at(*steps, i));
  }
  return *till_;
}

WordColumn Curve::column_in_words() const {
  WordColumn column{kernel_.step, points_.size(), word_array(points_.size())};
  kernel_.sum->fill({column.counts.get(), column.size});
  for (const ItemCourse* item : kernel_.by_cover) add_by_cover(*item, column);
  return column;
}

void Curve::add_by_cover(const ItemCourse& item, WordColumn& column) const {
  const Rational step = column.step * costing_.plan().money().ratio();
  std::size_t turn = 0;
  for (std::size_t place = 0; place < points_.size();) {
    pulse(++turn);
    const Stretch stretch = item.stretch_from(place);
    const std::int64_t price = (stretch.cover.price / step).word_numerator();
    for (; place <= stretch.last; ++place) column.counts[place] += price;
  }
}

const std::vector<Breakpoint>& Curve::breakpoints() const {
  const std::scoped_lock lock(mutex_);
  if (!breakpoints_) breakpoints_ = make_breakpoints();
  return *breakpoints_;
}

std::vector<Breakpoint> Curve::make_breakpoints() const {
  std::vector<std::pair<std::size_t, Breakpoint>> found;
  std::size_t turn = 0;
  for (const ItemCourse& item : items_) {
    Stretch before;
    for (std::size_t place = 0; place < points_.size(); place = before.last + 1) {
      pulse(++turn);
      Stretch now = item.stretch_from(place);
      if (place > 0 && !now.buys_as(before)) {
        found.emplace_back(place, Breakpoint{points_[place], item.plan().item,
                                             packs_of(*before.group, before.cover),
                                             packs_of(*now.group, now.cover)});
      }
      if (found.size() > most_breakpoints) {
        fail("cost.curve",
             "the packs change more than " + std::to_string(most_breakpoints) + " times",
             "ask for the breakpoints of fewer portions");
      }
      before = std::move(now);
    }
  }
  std::ranges::stable_sort(found, {}, &std::pair<std::size_t, Breakpoint>::first);
  std::vector<Breakpoint> breakpoints;
  for (auto& [place, point] : found) breakpoints.push_back(std::move(point));
  return breakpoints;
}

std::vector<EvenCounts> Curve::even_counts() const {
  if (even_) return *even_;
  std::vector<EvenCounts> even;
  for (const ItemCourse& item : items_) even.push_back({item.plan().item, even_counts_of(item)});
  return even;
}

std::vector<CountRun> Curve::even_counts_of(const ItemCourse& item) const {
  CountRuns even;
  std::size_t turn = 0;
  for (std::size_t place = 0; place < points_.size();) {
    pulse(++turn);
    const Stretch stretch = item.stretch_from(place);
    // Of a need that grows the last one alone can be met to the full.
    if (item.is_straight() && !stretch.step.is_zero()) place = stretch.last;
    for (; place <= stretch.last; ++place) {
      if (stretch.cover.total.is_zero()) continue;
      if (item.to_buy_at(place, stretch) == stretch.cover.total) even.add(points_[place]);
    }
  }
  return even.runs();
}

std::optional<CheapestCount> Curve::cheapest(std::string_view which) const {
  return cheapest_count(points_, cost(which));
}

std::vector<DominatedCounts> Curve::dominated(std::string_view which) const {
  return dominated_counts(points_, cost(which));
}

}  // namespace scalepan
