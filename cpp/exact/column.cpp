#include "exact/column.hpp"

#include <algorithm>
#include <limits>
#include <optional>
#include <string>

#include "exact/big.hpp"
#include "exact/error.hpp"
#include "exact/later_machines.hpp"
#include "exact/wide.hpp"

namespace scalepan {

namespace {

/// Shorter blocks than this are no faster than sums of 128 bits.
constexpr std::int64_t least_block = 64;

// Kernels. Who calls them has proven that no sum leaves its type.

SCALEPAN_FOR_LATER_MACHINES_TOO
std::int64_t word_sum(const std::int64_t* words, std::size_t size) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < size; ++i) sum += words[i];
  return sum;
}

SCALEPAN_FOR_LATER_MACHINES_TOO
std::int64_t word_sum_of_products(const std::int64_t* a, const std::int64_t* b, std::size_t size) {
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < size; ++i) sum += a[i] * b[i];
  return sum;
}

Wide wide_sum_of_products(const std::int64_t* a, const std::int64_t* b, std::size_t size) {
  Wide sum = 0;
  for (std::size_t i = 0; i < size; ++i) sum += wide_product(a[i], b[i]);
  return sum;
}

// Proofs.

/// How many terms, of which none is larger, are a word in sum whatever their signs.
std::int64_t terms_in_word(const Wide& largest) {
  return largest == 0 ? word_max : to_word(Wide(word_max) / largest);
}

/// Whether so many terms, of which none is larger, are at most 126 bits in sum.
bool sum_fits_wide(const Wide& largest, std::size_t terms) {
  constexpr unsigned bits = 126;
  return largest <= (Wide(1) << bits) / Wide(std::max<std::size_t>(terms, 1));
}

/// Block by block, each of so many terms that its sum is a word.
template <typename BlockSum>
Wide sum_of_blocks(std::size_t size, std::int64_t block, BlockSum block_sum) {
  const auto step = static_cast<std::size_t>(block);
  Wide sum = 0;
  for (std::size_t from = 0; from < size;) {
    const std::size_t length = std::min(step, size - from);
    sum += Wide(block_sum(from, length));
    from += length;
  }
  return sum;
}

Rational over(const Wide& sum, std::int64_t denominator, std::int64_t other = 1) {
  std::int64_t product = 0;
  if (fits_word(sum) && multiply_words(denominator, other, product)) {
    return {to_word(sum), product};
  }
  return make_rational(BigInt(sum), BigInt(denominator) * other);
}

/// The least common multiple, where it is a word.
std::optional<std::int64_t> common_multiple(std::int64_t a, std::int64_t b) {
  if (a % b == 0) return a;
  const auto common = static_cast<std::int64_t>(
      gcd_words(static_cast<std::uint64_t>(a), static_cast<std::uint64_t>(b)));
  std::int64_t multiple = 0;
  if (!multiply_words(a / common, b, multiple)) return std::nullopt;
  return multiple;
}

std::optional<std::int64_t> common_denominator(std::span<const Rational> numbers) {
  std::optional<std::int64_t> denominator = 1;
  for (const Rational& number : numbers) {
    if (!number.is_word()) return std::nullopt;
    denominator = common_multiple(*denominator, number.word_denominator());
    if (!denominator) return std::nullopt;
  }
  return denominator;
}

/// The numerators over a denominator that all of theirs divide; empty where one is no word.
std::optional<std::vector<std::int64_t>> words_over(std::int64_t denominator,
                                                    std::span<const Rational> numbers) {
  std::vector<std::int64_t> words(numbers.size());
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    const std::int64_t times = denominator / numbers[i].word_denominator();
    if (!multiply_words(numbers[i].word_numerator(), times, words[i])) return std::nullopt;
  }
  return words;
}

}  // namespace

RationalColumn RationalColumn::from(std::span<const Rational> numbers) {
  RationalColumn column;
  if (const auto denominator = common_denominator(numbers)) {
    if (auto words = words_over(*denominator, numbers)) {
      column.denominator_ = *denominator;
      column.words_ = std::move(*words);
      for (const std::int64_t word : column.words_) {
        column.largest_ = std::max(column.largest_, word < 0 ? -word : word);
      }
      return column;
    }
  }
  column.over_one_ = false;
  column.numbers_.assign(numbers.begin(), numbers.end());
  return column;
}

Rational RationalColumn::at(std::size_t i) const {
  return over_one_ ? Rational(words_[i], denominator_) : numbers_[i];
}

Rational RationalColumn::sum() const {
  if (over_one_) {
    const auto block_sum = [&](std::size_t from, std::size_t length) {
      return word_sum(words_.data() + from, length);
    };
    return over(sum_of_blocks(words_.size(), terms_in_word(Wide(largest_)), block_sum),
                denominator_);
  }
  Rational sum;
  for (const Rational& number : numbers_) sum += number;
  return sum;
}

Rational sum_of_products(const RationalColumn& a, const RationalColumn& b) {
  const std::size_t size = a.size();
  if (b.size() != size) {
    fail("number.columns", "columns of " + std::to_string(size) + " and " +
                               std::to_string(b.size()) + " numbers have no products line by line");
  }
  if (a.over_one_ && b.over_one_) {
    const Wide largest = wide_product(a.largest_, b.largest_);
    const std::int64_t* left = a.words_.data();
    const std::int64_t* right = b.words_.data();
    const std::int64_t block = fits_word(largest) ? terms_in_word(largest) : 0;
    if (block >= least_block) {
      const auto block_sum = [&](std::size_t from, std::size_t length) {
        return word_sum_of_products(left + from, right + from, length);
      };
      return over(sum_of_blocks(size, block, block_sum), a.denominator_, b.denominator_);
    }
    if (sum_fits_wide(largest, size)) {
      return over(wide_sum_of_products(left, right, size), a.denominator_, b.denominator_);
    }
  }
  Rational sum;
  for (std::size_t i = 0; i < size; ++i) sum += a.at(i) * b.at(i);
  return sum;
}

}  // namespace scalepan
