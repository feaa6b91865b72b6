// Rational beside its peers: sums, products and totals of 20 lines.
//
// Each row is named <operation>/<operands>/<type>, so that rows which differ in the type alone
// can be paired. Operands: `typ` as recipes have them, `uni` with any denominator below 10,000.
// All types get the same 32,768 pairs, and every result is stored.
#include <benchmark/benchmark.h>

#include <array>
#include <cstddef>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "rational_peers.hpp"

namespace {

constexpr std::size_t pair_count = 32768;
constexpr std::size_t lines_of_a_total = 20;

struct Fraction {
  std::int64_t numerator;
  std::int64_t denominator;
};

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : random_(seed) {}

  Fraction typ() {
    constexpr std::array<std::int64_t, 9> denominators{1, 1, 2, 3, 4, 8, 16, 64, 1000};
    return {below(1000000), denominators.at(static_cast<std::size_t>(below(9)))};
  }
  Fraction uni() { return {below(1000000), 1 + below(9999)}; }
  /// A whole price, so that totals of lines fit 64 bits in every type.
  Fraction price() { return {below(10000), 1}; }

 private:
  std::int64_t below(std::int64_t end) {
    return std::uniform_int_distribution<std::int64_t>(0, end - 1)(random_);
  }

  std::mt19937_64 random_;
};

using Pairs = std::vector<std::array<Fraction, 2>>;

Pairs typ_pairs() {
  Draw draw(1);
  Pairs pairs(pair_count);
  for (auto& pair : pairs) pair = {draw.typ(), draw.typ()};
  return pairs;
}

Pairs uni_pairs() {
  Draw draw(2);
  Pairs pairs(pair_count);
  for (auto& pair : pairs) pair = {draw.uni(), draw.uni()};
  return pairs;
}

Pairs priced_lines() {
  Draw draw(3);
  Pairs pairs(pair_count);
  for (auto& pair : pairs) pair = {draw.typ(), draw.price()};
  return pairs;
}

template <typename Type>
struct Columns {
  std::vector<typename Type::Number> left;
  std::vector<typename Type::Number> right;
  std::vector<typename Type::Number> results;

  explicit Columns(const Pairs& pairs) : results(pairs.size()) {
    for (const auto& [a, b] : pairs) {
      left.emplace_back(a.numerator, a.denominator);
      right.emplace_back(b.numerator, b.denominator);
    }
  }
};

template <typename Type>
void sums(benchmark::State& state, const Pairs& pairs) {
  Columns<Type> columns(pairs);
  for (auto _ : state) {
    for (std::size_t i = 0; i < pair_count; ++i) {
      Type::add(columns.results[i], columns.left[i], columns.right[i]);
    }
    benchmark::ClobberMemory();
  }
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(pair_count));
}

template <typename Type>
void products(benchmark::State& state, const Pairs& pairs) {
  Columns<Type> columns(pairs);
  for (auto _ : state) {
    for (std::size_t i = 0; i < pair_count; ++i) {
      Type::multiply(columns.results[i], columns.left[i], columns.right[i]);
    }
    benchmark::ClobberMemory();
  }
  state.SetItemsProcessed(state.iterations() * static_cast<std::int64_t>(pair_count));
}

template <typename Type>
void totals(benchmark::State& state, const Pairs& pairs) {
  constexpr std::size_t total_count = pair_count / lines_of_a_total;
  Columns<Type> columns(pairs);
  for (auto _ : state) {
    for (std::size_t total = 0; total < total_count; ++total) {
      typename Type::Number sum(0, 1);
      for (std::size_t line = 0; line < lines_of_a_total; ++line) {
        const std::size_t i = total * lines_of_a_total + line;
        Type::add_product(sum, columns.left[i], columns.right[i]);
      }
      columns.results[total] = sum;
    }
    benchmark::ClobberMemory();
  }
  state.SetItemsProcessed(state.iterations() *
                          static_cast<std::int64_t>(total_count * lines_of_a_total));
}

using Measure = void (*)(benchmark::State&, const Pairs&);

void add_row(const std::string& row, const char* type, Measure measure, Pairs (*pairs)()) {
  benchmark::RegisterBenchmark((row + "/" + type).c_str(),
                               [=](benchmark::State& state) { measure(state, pairs()); });
}

template <typename... Types>
bool add_all_rows() {
  (add_row("add/typ", Types::name, sums<Types>, typ_pairs), ...);
  (add_row("mul/typ", Types::name, products<Types>, typ_pairs), ...);
  (add_row("add/uni", Types::name, sums<Types>, uni_pairs), ...);
  (add_row("mul/uni", Types::name, products<Types>, uni_pairs), ...);
  (add_row("fma20/typ", Types::name, totals<Types>, priced_lines), ...);
  return true;
}

const bool ours_added = add_all_rows<peers::Scalepan, peers::BoostInt64>();
#ifdef SCALEPAN_PEER_FLINT
const bool flint_added = add_all_rows<peers::Flint>();
#endif
#ifdef SCALEPAN_PEER_GMP
const bool gmp_added = add_all_rows<peers::Gmp>();
#endif

}  // namespace
