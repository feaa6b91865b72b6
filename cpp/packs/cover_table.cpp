#include "packs/cover_table.hpp"

#include <algorithm>

namespace scalepan {

CoverTable::CoverTable(const ListedSteps<std::int64_t>& steps, CoverOrder order) {
  totals_.reserve(steps.size());
  prices_.reserve(steps.size());
  for (const CoverKey<std::int64_t>& key : steps.keys()) {
    totals_.push_back(key.total(order));
    prices_.push_back(key.price(order));
  }
  from_ = totals_.back();
  most_ = from_;
  if (const auto& period = steps.period()) {
    filler_size_ = period->key.total(order);
    filler_price_ = period->key.price(order);
    // Prices listed stay below 2^62, so fillers for the other half of a word are safe.
    const std::int64_t fillers = (word_max / 4) / std::max(filler_size_, filler_price_);
    most_ = std::max(from_, fillers * filler_size_);
  }
  while ((static_cast<std::size_t>(from_) >> shift_) > 2 * totals_.size()) ++shift_;
  std::size_t step = 0;
  for (std::size_t slot = 0; slot <= static_cast<std::size_t>(from_) >> shift_; ++slot) {
    while (static_cast<std::size_t>(totals_[step]) < slot << shift_) ++step;
    first_.push_back(static_cast<std::uint32_t>(step));
  }
}

}  // namespace scalepan
