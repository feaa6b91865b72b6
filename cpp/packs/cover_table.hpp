// A settled cover function in words, looked up in constant time.
#pragma once

#include <cstdint>
#include <vector>

#include "packs/listed_steps.hpp"

namespace scalepan {

/// Needs and totals count the packs' common size step, prices their common price step.
class CoverTable {
 public:
  struct Step {
    std::size_t step = 0;      // of those listed
    std::int64_t fillers = 0;  // taken beside it
  };

  /// `steps` must be closed.
  CoverTable(const ListedSteps<std::int64_t>& steps, CoverOrder order);

  /// The largest need that is looked up: so large that no sum leaves a word.
  [[nodiscard]] std::int64_t most() const { return most_; }
  /// Only for needs up to `most()`.
  [[nodiscard]] Step find(std::int64_t need) const {
    std::int64_t fillers = 0;
    if (need > from_) {
      fillers = (need - from_ + filler_size_ - 1) / filler_size_;
      need -= fillers * filler_size_;
    }
    if (need <= 0) return {0, fillers};
    std::size_t step = first_[static_cast<std::size_t>(need) >> shift_];
    while (totals_[step] < need) ++step;
    return {step, fillers};
  }
  [[nodiscard]] std::int64_t price(std::int64_t need) const {
    const Step found = find(need);
    return prices_[found.step] + found.fillers * filler_price_;
  }
  [[nodiscard]] std::int64_t total(std::int64_t need) const {
    const Step found = find(need);
    return totals_[found.step] + found.fillers * filler_size_;
  }
  [[nodiscard]] std::size_t size() const { return totals_.size(); }

 private:
  std::int64_t from_ = 0;
  std::int64_t filler_size_ = 1;
  std::int64_t filler_price_ = 0;
  std::int64_t most_ = 0;
  std::vector<std::int64_t> totals_;
  std::vector<std::int64_t> prices_;
  // The first step with a total of at least so many times 2^shift: one entry a step or two.
  std::vector<std::uint32_t> first_;
  unsigned shift_ = 0;
};

}  // namespace scalepan
