// Steps where nothing is limited: the stems, filled up.
#pragma once

#include "packs/listed_steps.hpp"
#include "packs/stems.hpp"

namespace scalepan {

/// Merges the stems with the steps already listed plus one filler, both in ascending order: each
/// step costs two looks, however many things there are.
template <class Number>
class FilledSteps final : public ListedSteps<Number> {
 public:
  using Key = CoverKey<Number>;

  FilledSteps(std::shared_ptr<const std::vector<PackThing<Number>>> all,
              std::shared_ptr<Stems<Number>> stems, CoverOrder order,
              std::shared_ptr<CoverWork> work);

  bool extend() override;

 protected:
  void add_listed_counts(std::size_t step, ThingCounts<Number>& counts) const override;

 private:
  struct Origin {
    std::uint32_t before;  // a stem, or the step with one filler less
    bool stem;
  };

  [[nodiscard]] bool has_stem(std::size_t stem);
  void take(const Key& key, Origin origin);

  std::shared_ptr<Stems<Number>> stems_;
  std::shared_ptr<CoverWork> work_;
  std::vector<Origin> origins_{{0, true}};
  std::size_t next_stem_ = 1;
  std::size_t next_filled_ = 0;
};

extern template class FilledSteps<std::int64_t>;
extern template class FilledSteps<Rational>;

}  // namespace scalepan
