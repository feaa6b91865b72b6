// The sum of the products of two columns, exactly, beside doubles and FLINT.
//
// Amounts as recipes have them, times prices in whole cents. The columns are made before; what they
// come to is a fraction in lowest terms each time.
#include <benchmark/benchmark.h>

#include <array>
#include <cstdint>
#include <random>
#include <vector>

#include "exact/column.hpp"
#include "exact/later_machines.hpp"
#include "rational_peers.hpp"

namespace {

using scalepan::Rational;

constexpr std::size_t line_count = 32768;

struct Lines {
  Lines() {
    constexpr std::array<std::int64_t, 9> denominators{1, 1, 2, 3, 4, 8, 16, 64, 1000};
    std::mt19937_64 random(4);
    const auto below = [&](std::int64_t end) {
      return std::uniform_int_distribution<std::int64_t>(0, end - 1)(random);
    };
    for (std::size_t i = 0; i < line_count; ++i) {
      const std::int64_t denominator = denominators.at(static_cast<std::size_t>(below(9)));
      amounts.emplace_back(below(1'000'000), denominator);
      prices.emplace_back(below(10'000), 100);
    }
  }

  std::vector<Rational> amounts;
  std::vector<Rational> prices;
};

const Lines& lines() {
  static const Lines made;
  return made;
}

std::vector<double> in_doubles(const std::vector<Rational>& numbers) {
  std::vector<double> doubles;
  for (const Rational& number : numbers) {
    doubles.push_back(static_cast<double>(number.word_numerator()) /
                      static_cast<double>(number.word_denominator()));
  }
  return doubles;
}

/// Sixteen sums side by side, so that none waits for the one before; for the same machines as ours.
SCALEPAN_FOR_LATER_MACHINES_TOO
double double_sum_of_products(const double* a, const double* b, std::size_t size) {
  constexpr std::size_t lanes = 16;
  std::array<double, lanes> sums{};
  for (std::size_t i = 0; i < size; i += lanes) {
    for (std::size_t lane = 0; lane < lanes; ++lane) sums[lane] += a[i + lane] * b[i + lane];
  }
  double sum = 0.0;
  for (const double one : sums) sum += one;
  return sum;
}

static_assert(line_count % 16 == 0);

void done(benchmark::State& state) {
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(line_count));
}

void columns(benchmark::State& state) {
  const auto amounts = scalepan::RationalColumn::from(lines().amounts);
  const auto prices = scalepan::RationalColumn::from(lines().prices);
  for (auto _ : state) benchmark::DoNotOptimize(sum_of_products(amounts, prices));
  done(state);
}
BENCHMARK(columns)->Name("column/sum of products/scalepan");

void doubles(benchmark::State& state) {
  const std::vector<double> amounts = in_doubles(lines().amounts);
  const std::vector<double> prices = in_doubles(lines().prices);
  for (auto _ : state) {
    benchmark::DoNotOptimize(double_sum_of_products(amounts.data(), prices.data(), line_count));
  }
  done(state);
}
BENCHMARK(doubles)->Name("column/sum of products/double_16_sums");

#ifdef SCALEPAN_PEER_FLINT
void flint(benchmark::State& state) {
  using Peer = peers::Flint;
  std::vector<Peer::Number> amounts;
  std::vector<Peer::Number> prices;
  for (std::size_t i = 0; i < line_count; ++i) {
    const Rational& amount = lines().amounts[i];
    const Rational& price = lines().prices[i];
    amounts.emplace_back(amount.word_numerator(), amount.word_denominator());
    prices.emplace_back(price.word_numerator(), price.word_denominator());
  }
  for (auto _ : state) {
    Peer::Number sum(0, 1);
    for (std::size_t i = 0; i < line_count; ++i) Peer::add_product(sum, amounts[i], prices[i]);
    benchmark::DoNotOptimize(sum);
  }
  done(state);
}
BENCHMARK(flint)->Name("column/sum of products/flint");
#endif

}  // namespace
