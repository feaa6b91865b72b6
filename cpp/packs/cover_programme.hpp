// The programme of one cover function, in words or in fractions.
#pragma once

#include <memory>
#include <vector>

#include "packs/filled_steps.hpp"

namespace scalepan {

/// A purchase in the programme's numbers, with what limits it.
template <class Number>
struct LimitedThing {
  Thing<Number> thing;
  Number least{};
  std::optional<Number> limit;
};

/// A step in the programme's units.
struct FoundStep {
  std::map<std::size_t, Rational> counts;  // by purchase
  Rational after;                          // total of the step before
  Rational upto;                           // its own
};

template <class Number>
class CoverProgramme {
 public:
  /// Throws `cover.too_many` where limits and least numbers make too many branches.
  CoverProgramme(std::vector<LimitedThing<Number>> things, CoverOrder order);

  /// The step that meets the need, or all needs just above it; none where there is not so much to
  /// buy. Only for needs above zero. Throws `cover.too_many`.
  [[nodiscard]] std::optional<FoundStep> find(const Rational& need, bool above);

  /// Lists steps until the rest is known, or a little work is spent.
  void settle_if_cheap();
  /// Whether every answer is known, so that `find` changes nothing any more.
  [[nodiscard]] bool settled() const { return steps_->closed(); }
  /// Whether the steps were too many to list, so that needs are met from the stems.
  [[nodiscard]] bool by_stems() const { return by_stems_; }

  [[nodiscard]] const ListedSteps<Number>& steps() const { return *steps_; }
  [[nodiscard]] CoverOrder order() const { return order_; }

  /// All that can be bought, or nothing where that has no end.
  [[nodiscard]] std::optional<Rational> most();
  struct Period {
    Rational from;
    std::size_t filler = 0;  // the purchase
  };
  /// None where the function ends. Throws `cover.too_many`.
  [[nodiscard]] std::optional<Period> period();

  /// Steps listed where the stems alone could answer as well; beyond them listing does not pay.
  static constexpr std::size_t most_listed = 4096;

 private:
  using Steps = std::shared_ptr<ListedSteps<Number>>;
  using All = std::shared_ptr<const std::vector<Thing<Number>>>;

  static All things_of(const std::vector<LimitedThing<Number>>& things);
  void sort_out(const std::vector<LimitedThing<Number>>& things);
  [[nodiscard]] bool beaten(const LimitedThing<Number>& thing) const;
  Steps unlimited(std::vector<ThingIndex> free, std::size_t next);
  Steps bundled(Steps steps, ThingIndex thing, Number most);
  Steps limited(const Steps& steps, ThingIndex thing, const Number& least, const Number& limit);
  Steps either(const Steps& without, const Steps& with, ThingIndex thing, const Number& count);

  [[nodiscard]] const Number& size_of(ThingIndex thing) const;
  void grow_to(const Rational& need);
  [[nodiscard]] FoundStep in_list(const Rational& need, bool above) const;
  [[nodiscard]] FoundStep in_stems(const Rational& need, bool above) const;
  [[nodiscard]] std::map<std::size_t, Rational> by_purchase(const ThingCounts<Number>& counts,
                                                            ThingIndex filler,
                                                            const Rational& fillers) const;

  struct Branch {  // unlimited, but at least so many
    ThingIndex thing;
    Number least;
  };
  struct Limit {
    ThingIndex thing;
    Number least;
    Number limit;
  };

  All all_;
  CoverOrder order_;
  std::shared_ptr<CoverWork> work_ = std::make_shared<CoverWork>(look_weight<Number>);
  std::vector<ThingIndex> free_;
  std::vector<Branch> branches_;
  std::vector<Limit> limits_;
  std::size_t choices_ = 0;
  std::shared_ptr<Stems<Number>> stems_;  // only where nothing is limited
  Steps steps_;
  bool by_stems_ = false;
};

extern template class CoverProgramme<std::int64_t>;
extern template class CoverProgramme<Rational>;

}  // namespace scalepan
