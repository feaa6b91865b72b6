#include "exact/stairs.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "exact/later_machines.hpp"
#include "exact/wide.hpp"

#ifdef __GNUC__
#define SCALEPAN_INLINE [[gnu::always_inline]] inline
#define SCALEPAN_ALONE __restrict  // what it points to is reached by no other name
#else
#define SCALEPAN_INLINE inline
#define SCALEPAN_ALONE
#endif

namespace scalepan {

namespace {

constexpr std::size_t lane_count = 32;
constexpr std::size_t block_points = 2048;  // both buffers of a block stay in the nearest cache
constexpr std::int64_t most_sum = std::int64_t{1} << 62U;
constexpr std::int64_t most_rises_a_point = 8;  // where they are followed one by one
constexpr std::int64_t most_block_sum = std::int64_t{1} << 30U;

std::int64_t size_of(std::int64_t x) { return x < 0 ? -x : x; }

Wide wide_sum(std::int64_t a, std::int64_t b) { return Wide(a) + Wide(b); }

/// What slope * i + start comes to at the last point, and a width more.
Wide reach(const Stair& stair, std::size_t points) {
  const auto last = static_cast<std::int64_t>(points == 0 ? 0 : points - 1);
  return wide_product(stair.slope, last) + wide_sum(size_of(stair.start), stair.width);
}

/// At most so much is added up over so many points, all heights taken as positive.
Wide most_over(const Stair& stair, std::size_t points) {
  const Wide count = reach(stair, points) / Wide(stair.width) + Wide(1);
  return fits_word(count) ? wide_product(size_of(stair.height), to_word(count)) : Wide(word_max);
}

/// At most so much is added inside a block, where the sum before it is left out.
Wide most_in_block(const Stair& stair) {
  return most_over({stair.height, stair.slope, 0, stair.width}, block_points + lane_count);
}

bool valid(const Stair& stair) {
  return stair.slope >= 0 && stair.width > 0 && stair.start >= -word_max &&
         stair.height >= -word_max;
}

/// Lanes take as long for every stair, rises by their number: about one in eight points, as
/// measured, is where they meet.
bool rises_often(const Stair& stair) { return wide_product(stair.slope, 8) > Wide(stair.width); }

/// What moves lanes on to their next points.
template <class Word>
struct Stride {
  Word width;
  Word height;
  Word fall;  // of the remainder where the stair does not rise, less the width
  Word rise;  // of the sum where it does
};

/// Nothing depends on a neighbour, so that compilers work on as many lanes at once as the machine
/// has room for.
template <class Word>
SCALEPAN_INLINE void add_lanes(Word* SCALEPAN_ALONE sums, Word* SCALEPAN_ALONE rests,
                               Word* SCALEPAN_ALONE heights, const Stride<Word>& stride) {
  constexpr int sign_bit = 8 * sizeof(Word) - 1;
  for (std::size_t at = 0; at < block_points; at += lane_count) {
    for (std::size_t lane = 0; lane < lane_count; ++lane) {
      sums[at + lane] += heights[lane];
      const Word rest = rests[lane] + stride.fall;
      const Word below_zero = rest >> sign_bit;  // all bits, where it is
      rests[lane] = rest + (below_zero & stride.width);
      heights[lane] += stride.rise - (below_zero & stride.height);
    }
  }
}

SCALEPAN_FOR_LATER_MACHINES_TOO void add_block(std::int32_t* sums, std::int32_t* rests,
                                               std::int32_t* heights,
                                               const Stride<std::int32_t>& stride) {
  add_lanes(sums, rests, heights, stride);
}
SCALEPAN_FOR_LATER_MACHINES_TOO void add_block(std::int64_t* sums, std::int64_t* rests,
                                               std::int64_t* heights,
                                               const Stride<std::int64_t>& stride) {
  add_lanes(sums, rests, heights, stride);
}

/// It is zero for some points, which lanes know not.
bool begins_late(const Stair& stair) { return stair.start <= -stair.width; }

/// A block of sums above those at its start.
template <class Word>
struct Block {
  std::array<Word, block_points> by_lanes;
  std::array<Word, block_points> rises;
};

/// One stair, followed through all blocks. Its remainder is of slope * i + start + width - 1, so
/// that the quotient is what is asked for.
template <class Word>
class Lanes {
 public:
  explicit Lanes(const Stair& stair) {
    const std::int64_t first = stair.start + (stair.width - 1);
    before_ = stair.height * (first / stair.width);
    const std::int64_t rest = first % stair.width;
    for (std::size_t lane = 0; lane < lane_count; ++lane) {
      const auto lanes_on = static_cast<std::int64_t>(lane);
      const std::int64_t here = rest + stair.slope * lanes_on;
      rests_[lane] = static_cast<Word>(here % stair.width);
      heights_[lane] = static_cast<Word>(stair.height * (here / stair.width));
    }
    const std::int64_t more = stair.slope * static_cast<std::int64_t>(lane_count);
    const std::int64_t rise = stair.height * (more / stair.width) + stair.height;
    stride_ = {static_cast<Word>(stair.width), static_cast<Word>(stair.height),
               static_cast<Word>(more % stair.width - stair.width), static_cast<Word>(rise)};
  }

  /// The sum at the start of the next block.
  [[nodiscard]] std::int64_t before() const { return before_; }

  void add_to(std::array<Word, block_points>& sums) {
    add_block(sums.data(), rests_.data(), heights_.data(), stride_);
    const Word added = heights_.front();
    before_ += added;
    for (Word& height : heights_) height -= added;
  }

 private:
  std::array<Word, lane_count> rests_;
  std::array<Word, lane_count> heights_;
  Stride<Word> stride_;
  std::int64_t before_ = 0;
};

/// One stair, followed from rise to rise.
class Rises {
 public:
  explicit Rises(const Stair& stair) : height_(stair.height), slope_(stair.slope) {
    const std::int64_t count =
        stair.start > 0 ? (stair.start - 1) / stair.width + 1 : std::int64_t{0};
    before_ = height_ * count;
    if (slope_ == 0) return;
    const std::int64_t missing = stair.width * count - stair.start;
    next_ = missing / slope_ + 1;
    rest_ = missing % slope_;
    gap_ = stair.width / slope_;
    gap_rest_ = stair.width % slope_;
  }

  [[nodiscard]] std::int64_t before() const { return before_; }

  template <class Word>
  void add_to(std::array<Word, block_points>& rises, std::int64_t begin) {
    const auto end = begin + static_cast<std::int64_t>(block_points);
    while (next_ < end) {
      rises[static_cast<std::size_t>(next_ - begin)] += static_cast<Word>(height_);
      rest_ += gap_rest_;
      const bool wraps = rest_ >= slope_;
      rest_ -= wraps ? slope_ : 0;
      next_ += gap_ + (wraps ? 1 : 0);
    }
  }

 private:
  std::int64_t height_;
  std::int64_t slope_;
  std::int64_t before_ = 0;
  std::int64_t next_ = word_max;  // where it rises next
  std::int64_t rest_ = 0;
  std::int64_t gap_ = 0;
  std::int64_t gap_rest_ = 0;
};

template <class Word>
void fill_by_blocks(const std::vector<Stair>& in_lanes, const std::vector<Stair>& by_rises,
                    std::span<std::int64_t> sums) {
  std::vector<Lanes<Word>> lanes(in_lanes.begin(), in_lanes.end());
  std::vector<Rises> rises;
  std::int64_t risen = 0;
  for (const Stair& stair : by_rises) {
    rises.emplace_back(stair);
    risen += rises.back().before();
  }
  Block<Word> block;
  for (std::size_t begin = 0; begin < sums.size(); begin += block_points) {
    block.by_lanes.fill(0);
    block.rises.fill(0);
    std::int64_t before = 0;
    for (Lanes<Word>& stair : lanes) {
      before += stair.before();
      stair.add_to(block.by_lanes);
    }
    for (Rises& stair : rises) stair.add_to(block.rises, static_cast<std::int64_t>(begin));
    const std::size_t count = std::min(block_points, sums.size() - begin);
    for (std::size_t i = 0; i < count; ++i) {
      risen += block.rises[i];
      sums[begin + i] = before + risen + block.by_lanes[i];
    }
  }
}

}  // namespace

std::optional<StairSum> StairSum::over(const std::vector<Stair>& stairs, std::size_t points) {
  if (points > static_cast<std::size_t>(most_sum)) return std::nullopt;
  // Whole blocks are filled, whose last points may lie beyond.
  const std::size_t filled = points + block_points + lane_count;
  Wide sum = 0;
  for (const Stair& stair : stairs) {
    if (!valid(stair) || reach(stair, filled) > Wide(most_sum)) return std::nullopt;
    if (begins_late(stair) && stair.slope / most_rises_a_point >= stair.width) return std::nullopt;
    sum += most_over(stair, filled);
    if (sum > Wide(most_sum)) return std::nullopt;
  }
  return StairSum(stairs);
}

StairSum::StairSum(const std::vector<Stair>& stairs) {
  Wide sum = 0;
  std::int64_t widest = 0;
  for (const Stair& stair : stairs) {
    if (stair.height == 0) continue;
    const bool lanes = rises_often(stair) && !begins_late(stair);
    (lanes ? lanes_ : rises_).push_back(stair);
    if (lanes) widest = std::max(widest, stair.width);
    sum += most_in_block(stair);
  }
  if (sum <= Wide(most_block_sum) && widest <= most_block_sum) lane_bits_ = 32;
}

void StairSum::fill(std::span<std::int64_t> sums) const {
  if (lane_bits_ == 32) {
    fill_by_blocks<std::int32_t>(lanes_, rises_, sums);
  } else {
    fill_by_blocks<std::int64_t>(lanes_, rises_, sums);
  }
}

}  // namespace scalepan
