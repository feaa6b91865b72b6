// Steps of a choice: without some purchases, or with them.
#pragma once

#include "packs/listed_steps.hpp"

namespace scalepan {

/// So many of one thing, bought together or not at all.
template <class Number>
struct Bundle {
  ThingIndex thing = 0;
  Number count{};
  CoverKey<Number> key;  // of all of them
};

/// The better of `without` and of the bundle with `with`, whatever the need.
///
/// Where both repeat, so does the choice. With one filler it does so where both do. Else the
/// filler of `with` is the bundle's own thing, and it wins for good: a cover of `without` that
/// holds enough fillers goes behind the one in which the bundle's thing takes their place.
template <class Number>
class EitherSteps final : public ListedSteps<Number> {
 public:
  using Key = CoverKey<Number>;

  /// `with` may be `without` itself: the bundle is then bought once at most.
  EitherSteps(std::shared_ptr<const std::vector<PackThing<Number>>> all,
              std::shared_ptr<ListedSteps<Number>> without,
              std::shared_ptr<ListedSteps<Number>> with, Bundle<Number> bundle, CoverOrder order,
              std::shared_ptr<CoverWork> work);

  bool extend() override;

 protected:
  void add_listed_counts(std::size_t step, ThingCounts<Number>& counts) const override;

 private:
  struct Origin {
    bool bundle = false;
    std::size_t step = 0;
  };

  bool skip_covered(ListedSteps<Number>& steps, std::size_t& next, const Key& more);
  [[nodiscard]] bool bundle_first(const Key& without, const Key& with) const;
  void close_where_both_have();
  [[nodiscard]] std::optional<Rational> both_repeat_from() const;
  [[nodiscard]] Rational one_wins_from() const;

  std::shared_ptr<ListedSteps<Number>> without_;
  std::shared_ptr<ListedSteps<Number>> with_;
  Bundle<Number> bundle_;
  std::shared_ptr<CoverWork> work_;
  std::vector<Origin> origins_{{}};
  std::size_t next_without_ = 1;
  std::size_t next_with_ = 0;
  bool from_known_ = false;
  std::optional<Rational> repeats_from_;
};

extern template class EitherSteps<std::int64_t>;
extern template class EitherSteps<Rational>;

}  // namespace scalepan
