// The programme of one cover function, in words or in fractions.
#pragma once

#include <memory>
#include <vector>

#include "packs/filled_steps.hpp"

namespace scalepan {

/// A purchase in the programme's numbers, with what limits it.
template <class Number>
struct LimitedThing {
  PackThing<Number> thing;
  Number least{};
  std::optional<Number> limit;
  std::optional<std::size_t> one_of;  // as in `Purchase`
};

/// All in the programme's units.
struct CoverQuestion {
  Rational need;             // above zero; not below where `above`
  bool above = false;        // all needs just above it are meant
  bool with_before = false;  // whether the step before is asked for
};

struct FoundStep {
  std::map<std::size_t, Rational> counts;  // by purchase
  Rational after;                          // total of the step before, where asked for
  Rational upto;                           // its own
};

template <class Number>
class CoverProgramme {
 public:
  /// Throws `cover.too_many` where limits and least numbers make too many branches.
  CoverProgramme(std::vector<LimitedThing<Number>> things, CoverOrder order);

  /// The step that meets the need; none where there is not so much to buy.
  /// Throws `cover.too_many`.
  [[nodiscard]] std::optional<FoundStep> find(const CoverQuestion& question);

  /// Lists steps until the rest is known, or a little work is spent.
  void settle_if_cheap();
  /// Whether every answer is known, so that `find` changes nothing any more.
  [[nodiscard]] bool settled() const { return steps_->closed(); }
  /// Whether the last answer came from the stems, since too many steps were not yet listed.
  [[nodiscard]] bool by_stems() const { return by_stems_ && !settled(); }

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

 private:
  using Steps = std::shared_ptr<ListedSteps<Number>>;
  using All = std::shared_ptr<const std::vector<PackThing<Number>>>;

  static All things_of(const std::vector<LimitedThing<Number>>& things);
  void sort_out(const std::vector<LimitedThing<Number>>& things);
  [[nodiscard]] bool beaten(const LimitedThing<Number>& thing) const;
  Steps unlimited(std::vector<ThingIndex> free, std::size_t next);
  Steps bundled(Steps steps, ThingIndex thing, Number most);
  Steps limited(const Steps& steps, ThingIndex thing, const Number& least, const Number& limit);
  Steps one_of(const Steps& steps, const std::vector<ThingIndex>& things);
  Steps either(const Steps& without, const Steps& with, ThingIndex thing, const Number& count);

  [[nodiscard]] const Number& size_of(ThingIndex thing) const;
  void list_to(const Number& target);
  void grow_stems_to(const Number& target);
  [[nodiscard]] FoundStep in_list(const CoverQuestion& question) const;
  [[nodiscard]] FoundStep in_stems(const CoverQuestion& question) const;
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
  std::map<std::size_t, std::vector<ThingIndex>> only_one_;
  std::size_t choices_ = 0;
  std::shared_ptr<Stems<Number>> stems_;  // only where nothing is limited
  Steps steps_;
  std::size_t may_list_ = 0;  // where the stems alone can answer as well
  bool by_stems_ = false;
};

extern template class CoverProgramme<std::int64_t>;
extern template class CoverProgramme<Rational>;

}  // namespace scalepan
