#include "food/yield_trial.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "food/catalog.hpp"

namespace scalepan {

namespace {

using Rows = std::vector<const WeighedRow*>;

/// The rows of one trial, and how its errors begin.
class TrialMaker {
 public:
  TrialMaker(std::string name, Rows rows) : name_(std::move(name)), rows_(std::move(rows)) {}

  [[nodiscard]] YieldTrial make() const {
    expect_one_kind();
    YieldTrial trial;
    trial.name = name_;
    trial.food = food();
    trial.bought = weight(YieldWord::bought);
    trial.edible = weight(YieldWord::edible);
    trial.drained = weight(YieldWord::drained);
    trial.pan = weight(YieldWord::into_the_pan);
    trial.cooked = weight(YieldWord::cooked);
    trial.served = weight(YieldWord::served);
    if (const WeighedRow* row = only(YieldWord::bought)) {
      trial.cost = row->value;
      trial.priced_per = row->per;
    }
    expect_whole(trial);
    if (!trial.pan && trial.cooked) trial.pan = trial.edible;
    trial.cut = parts({YieldWord::by_product, YieldWord::loss});
    trial.off = parts({YieldWord::taken_off, YieldWord::carving_loss});
    close(trial);
    expect_paid(trial);
    return trial;
  }

 private:
  [[noreturn]] void fail_row(const WeighedRow& row, std::string_view code, const std::string& what,
                             std::string hint = {}) const {
    fail(code, "trial " + name_ + ": " + what, std::move(hint), row.place);
  }

  [[nodiscard]] const WeighedRow* first(YieldWord word) const {
    const auto found = std::ranges::find(rows_, word, &WeighedRow::what);
    return found == rows_.end() ? nullptr : *found;
  }

  /// The row of a word that a trial has once at most.
  [[nodiscard]] const WeighedRow* only(YieldWord word) const {
    const WeighedRow* found = nullptr;
    for (const WeighedRow* row : rows_) {
      if (row->what != word) continue;
      if (found != nullptr) {
        fail_row(*row, "yield.duplicate", "a second row \"" + std::string(text_of(word)) + "\"",
                 "add the weights up, or begin another trial");
      }
      found = row;
    }
    return found;
  }

  [[nodiscard]] std::optional<Quantity> weight(YieldWord word) const {
    const WeighedRow* row = only(word);
    return row == nullptr ? std::nullopt : row->weight;
  }

  [[nodiscard]] std::string food() const {
    for (const YieldWord word :
         {YieldWord::bought, YieldWord::edible, YieldWord::into_the_pan, YieldWord::drained}) {
      const WeighedRow* row = first(word);
      if (row != nullptr && !row->part.empty()) return row->part;
    }
    return {};
  }

  void expect_one_kind() const {
    const WeighedRow* other = nullptr;
    for (const WeighedRow* row : rows_) {
      if (!row->weight) continue;
      const Dimension kind = row->weight->dimension().without_stages();
      if (other != nullptr && !(kind == other->weight->dimension().without_stages())) {
        fail_row(*row, "yield.kind",
                 other->weight->text() + " is a " +
                     other->weight->dimension().without_stages().name() + ", but " +
                     row->weight->text() + " is a " + kind.name(),
                 "one trial is weighed throughout, or measured by volume throughout");
      }
      other = row;
    }
  }

  /// A row of a word needs one of the other words.
  void expect_with(YieldWord word, std::initializer_list<YieldWord> others) const {
    const WeighedRow* row = first(word);
    if (row == nullptr) return;
    std::string names;
    for (const YieldWord other : others) {
      if (first(other) != nullptr) return;
      names += (names.empty() ? "\"" : " or \"") + std::string(text_of(other)) + "\"";
    }
    fail_row(*row, "yield.missing",
             "there is a row \"" + std::string(text_of(word)) + "\", but none " + names);
  }

  void expect_whole(const YieldTrial& trial) const {
    using enum YieldWord;
    if (trial.edible && trial.drained) {
      fail_row(*first(drained), "yield.stages", "it has an edible weight and a drained weight",
               "make two trials of them");
    }
    if (trial.drained && (trial.pan || trial.cooked)) {
      fail_row(*first(trial.pan ? into_the_pan : cooked), "yield.stages",
               "it has a drained weight and was cooked",
               "a cooked share is of the edible weight: make a trial of its own of the cooking");
    }
    expect_with(bought, {edible, drained});
    expect_with(drained, {bought});
    expect_with(by_product, {bought});
    expect_with(loss, {bought});
    expect_with(into_the_pan, {cooked});
    expect_with(cooked, {edible, into_the_pan});
    expect_with(taken_off, {served});
    expect_with(carving_loss, {served});
    expect_with(served, {cooked});
    if (!trial.bought && !trial.cooked) {
      fail_row(*rows_.front(), "yield.missing",
               "there is one weight and nothing to compare it with", "add a row bought, or cooked");
    }
  }

  /// Parts of the words, the rest still without a weight.
  [[nodiscard]] std::vector<TrialPart> parts(std::initializer_list<YieldWord> words) const {
    std::vector<TrialPart> found;
    std::set<std::pair<YieldWord, std::string>> names;
    const WeighedRow* rest = nullptr;
    for (const WeighedRow* row : rows_) {
      if (std::ranges::find(words, row->what) == words.end()) continue;
      TrialPart part{row->what,    row->part,  row->weight.value_or(Quantity()),
                     !row->weight, row->value, row->use};
      if (part.name.empty()) part.name = default_name(*row);
      if (part.is_rest && rest != nullptr) {
        fail_row(*row, "yield.duplicate", "two losses are the rest", "weigh one of them");
      }
      if (part.is_rest) rest = row;
      if (!names.emplace(part.what, part.name).second) {
        fail_row(*row, "yield.duplicate", "the part \"" + excerpt(part.name) + "\" is there twice",
                 "add the weights up, or give the parts different names");
      }
      found.push_back(std::move(part));
    }
    return found;
  }

  [[nodiscard]] std::string default_name(const WeighedRow& row) const {
    if (row.what == YieldWord::loss || row.what == YieldWord::carving_loss) {
      return std::string(text_of(row.what));
    }
    fail_row(row, "yield.missing",
             "a row \"" + std::string(text_of(row.what)) + "\" does not say which part it is",
             "name it in the column part");
  }

  void close(YieldTrial& trial) const {
    using enum YieldWord;
    if (trial.bought) {
      close_stage(*trial.bought, trial.cut, *trial.usable(), bought,
                  trial.drained ? drained : edible);
    }
    if (trial.edible && trial.pan && *trial.pan > *trial.edible) {
      fail_row(*first(into_the_pan), "yield.closing",
               trial.pan->text() + " went into the pan, but only " + trial.edible->text() +
                   " was there");
    }
    if (trial.served) close_stage(*trial.cooked, trial.off, *trial.served, cooked, served);
  }

  /// whole = parts + remainder, exactly; the rest is derived.
  void close_stage(const Quantity& whole, std::vector<TrialPart>& parts, const Quantity& remainder,
                   YieldWord from, YieldWord to) const {
    Quantity sum = without_stage(remainder);
    TrialPart* rest = nullptr;
    for (TrialPart& part : parts) {
      if (part.is_rest) {
        rest = &part;
      } else {
        sum = sum + part.weight;
      }
    }
    const Unit unit = whole.unit().without_stages();
    const Quantity left = (without_stage(whole) - sum).to(unit);
    const WeighedRow& row = *first(to);
    const std::string sides = without_stage(whole).text() + " " + std::string(text_of(from)) +
                              ", but parts, losses and " + std::string(text_of(to)) +
                              " weight make " + sum.to(unit).text();
    if (left.coherent().sign() < 0 || (rest == nullptr && !left.coherent().is_zero())) {
      const bool over = left.coherent().sign() < 0;
      const std::string loss(
          text_of(from == YieldWord::cooked ? YieldWord::carving_loss : YieldWord::loss));
      fail_row(row, "yield.closing",
               sides + ": " + (over ? (-left).text() + " too much" : left.text() + " is missing"),
               over ? "weigh again; no loss is below zero"
                    : "weigh again, or add a row \"" + loss + "\" whose weight is rest");
    }
    if (rest != nullptr) rest->weight = left;
  }

  void expect_paid(const YieldTrial& trial) const {
    const WeighedRow* paid = first(YieldWord::bought);
    if (trial.cost && trial.cost->coherent().is_zero()) {
      fail_row(*paid, "yield.value", "what was bought cost nothing", "leave the value out");
    }
    for (const WeighedRow* row : rows_) {
      if (row->value && !trial.cost) {
        fail_row(*row, "yield.missing",
                 "\"" + excerpt(row->part) + "\" has a value, but what was bought has no price",
                 "state the price in the value of a row \"bought\"");
      }
      if (row->value && !(row->value->dimension() == trial.cost->dimension())) {
        fail_row(*row, "yield.currency",
                 "\"" + excerpt(row->part) + "\" is in " + row->value->dimension().name() +
                     ", but what was bought in " + trial.cost->dimension().name());
      }
    }
    expect_credit(trial);
  }

  /// By-products before cooking and parts after it may be worth what was paid, not more.
  void expect_credit(const YieldTrial& trial) const {
    if (!trial.cost) return;
    Quantity left = *trial.cost;
    if (const auto credit = credit_of(trial.cut)) left = expect_left(left, *credit);
    if (!trial.served) return;
    left = left * (trial.pan->coherent() / trial.edible->coherent());
    if (const auto credit = credit_of(trial.off)) left = expect_left(left, *credit);
  }

  [[nodiscard]] Quantity expect_left(const Quantity& cost, const Quantity& credit) const {
    if (credit > cost) {
      fail_row(*first(YieldWord::bought), "yield.credit",
               "the parts are worth " + credit.text() + ", more than the " + cost.text() +
                   " they came from");
    }
    return cost - credit;
  }

  std::string name_;
  Rows rows_;
};

void expect_alike(const std::vector<YieldTrial>& trials, const std::vector<Place>& places) {
  const auto kind_of = [](const YieldTrial& trial) {
    return (trial.bought ? trial.bought : trial.pan)->dimension().without_stages();
  };
  const YieldTrial* named = nullptr;
  const YieldTrial* paid = nullptr;
  for (std::size_t i = 0; i < trials.size(); ++i) {
    const YieldTrial& trial = trials[i];
    if (!(kind_of(trial) == kind_of(trials.front()))) {
      fail("yield.kind",
           "trial " + trial.name + " is by " + kind_of(trial).name() + ", trial " +
               trials.front().name + " by " + kind_of(trials.front()).name(),
           "make two tests of them", places[i]);
    }
    if (trial.drained.has_value() != trials.front().drained.has_value()) {
      fail("yield.stages",
           "of the trials " + trial.name + " and " + trials.front().name +
               " one has a drained weight and one has not",
           "make two tests of them", places[i]);
    }
    if (named != nullptr && !trial.food.empty() &&
        plain_name(trial.food) != plain_name(named->food)) {
      fail("yield.food",
           "trial " + trial.name + " is of \"" + excerpt(trial.food) + "\", trial " + named->name +
               " of \"" + excerpt(named->food) + "\"",
           "a yield test is of one food", places[i]);
    }
    if (paid != nullptr && trial.cost && !(trial.cost->dimension() == paid->cost->dimension())) {
      fail("yield.currency",
           "trial " + trial.name + " is in " + trial.cost->dimension().name() + ", trial " +
               paid->name + " in " + paid->cost->dimension().name(),
           "one test is in one currency", places[i]);
    }
    if (!trial.food.empty() && named == nullptr) named = &trial;
    if (trial.cost && paid == nullptr) paid = &trial;
  }
}

}  // namespace

const std::optional<Quantity>& YieldTrial::at(Stage stage) const {
  static const std::optional<Quantity> none;
  switch (stage) {
    case Stage::as_purchased:
      return bought;
    case Stage::edible:
      return edible;
    case Stage::drained:
      return drained;
    case Stage::cooked:
      return cooked;
    case Stage::served:
      return served;
    case Stage::none:
      break;
  }
  return none;
}

std::vector<YieldTrial> make_trials(std::span<const WeighedRow> rows) {
  if (rows.size() > most_rows) {
    fail("yield.too_many", "there are " + std::to_string(rows.size()) + " rows",
         "a yield test has at most " + std::to_string(most_rows));
  }
  std::vector<std::pair<std::string, Rows>> by_name;
  std::map<std::string_view, std::size_t> index;
  for (const WeighedRow& row : rows) {
    const auto [found, fresh] = index.emplace(row.trial, by_name.size());
    if (fresh) by_name.emplace_back(row.trial, Rows());
    by_name[found->second].second.push_back(&row);
  }
  if (by_name.empty()) fail("yield.missing", "the yield test has no trial");
  std::vector<YieldTrial> trials;
  std::vector<Place> places;
  for (auto& [name, own] : by_name) {
    places.push_back(own.front()->place);
    trials.push_back(TrialMaker(name, std::move(own)).make());
  }
  expect_alike(trials, places);
  return trials;
}

std::optional<Quantity> credit_of(std::span<const TrialPart> parts) {
  std::optional<Quantity> sum;
  for (const TrialPart& part : parts) {
    if (part.value) sum = sum ? *sum + *part.value : *part.value;
  }
  return sum;
}

}  // namespace scalepan
