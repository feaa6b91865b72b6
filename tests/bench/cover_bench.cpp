// Cover functions beside GLPK: every need at once against one need in the solver.
//
// Rows are <row>/<program>; all programs of a row get the same packs and needs. `all needs` makes
// the function and answers one need, GLPK one need alone. `adversarial` has sizes without a common
// factor at nearly one unit price, and needs of any size.
#include <benchmark/benchmark.h>

#ifdef SCALEPAN_PEER_GLPK
#include <glpk.h>
#endif

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdint>
#include <random>
#include <stdexcept>
#include <string>
#include <vector>

#include "packs/cover_function.hpp"
#include "packs/plain_packs.hpp"

namespace {

using scalepan::CoverFunction;
using scalepan::Pack;
using scalepan::Rational;

constexpr std::size_t instance_count = 100;

struct PlainPack {
  std::int64_t grams;
  std::int64_t pence;
};

struct Instance {
  std::vector<PlainPack> plain;
  std::vector<Pack> packs;
  std::int64_t need = 0;
};

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : random_(seed) {}

  std::int64_t between(std::int64_t low, std::int64_t high) {
    return std::uniform_int_distribution<std::int64_t>(low, high)(random_);
  }

  /// Three to seven packs as shops have them, larger ones at a lower unit price, give or take.
  Instance shop() {
    constexpr std::array<std::int64_t, 21> sizes{50,  75,  100,  125,  200,  227,  240,
                                                 250, 300, 340,  400,  454,  500,  750,
                                                 800, 900, 1000, 1500, 2000, 2500, 5000};
    Instance instance;
    for (std::int64_t count = between(3, 7); count > 0; --count) {
      const auto place = between(0, static_cast<std::int64_t>(sizes.size()) - 1);
      const std::int64_t grams = sizes.at(static_cast<std::size_t>(place));
      instance.plain.push_back({grams, grams * between(90 - 2 * place, 110 - 2 * place) / 80 + 1});
    }
    instance.need = between(1, 20000);
    return told(std::move(instance));
  }

  /// Five to nine odd sizes at three pence a gram, three pence more or less; needs of a kilogram to
  /// a million kilograms.
  Instance adversarial() {
    Instance instance;
    for (std::int64_t count = between(5, 9); count > 0; --count) {
      const std::int64_t grams = 2 * between(100, 1500) + 1;
      instance.plain.push_back({grams, 3 * grams + between(-3, 3)});
    }
    std::int64_t least = 1000;
    for (std::int64_t i = between(0, 5); i > 0; --i) least *= 10;
    instance.need = between(least, 10 * least);
    return told(std::move(instance));
  }

 private:
  static Instance told(Instance instance) {
    for (const PlainPack& pack : instance.plain) {
      instance.packs.push_back({Rational(pack.grams), Rational(pack.pence)});
    }
    return instance;
  }

  std::mt19937_64 random_;
};

const std::vector<Instance>& shop_instances() {
  static const std::vector<Instance> instances = [] {
    Draw draw(1);
    std::vector<Instance> made(instance_count);
    for (Instance& instance : made) instance = draw.shop();
    return made;
  }();
  return instances;
}

const std::vector<Instance>& adversarial_instances() {
  static const std::vector<Instance> instances = [] {
    Draw draw(2);
    std::vector<Instance> made(instance_count);
    for (Instance& instance : made) instance = draw.adversarial();
    return made;
  }();
  return instances;
}

std::int64_t price_by_function(const Instance& instance) {
  const CoverFunction function(scalepan::purchases_of(instance.packs));
  return function.at(instance.need).price.word_numerator();
}

#ifdef SCALEPAN_PEER_GLPK
std::int64_t price_by_glpk(const Instance& instance) {
  const int columns = static_cast<int>(instance.plain.size());
  glp_prob* problem = glp_create_prob();
  glp_set_obj_dir(problem, GLP_MIN);
  glp_add_rows(problem, 1);
  glp_set_row_bnds(problem, 1, GLP_LO, static_cast<double>(instance.need), 0.0);
  glp_add_cols(problem, columns);
  std::vector<int> places{0};
  std::vector<double> sizes{0.0};
  for (int column = 1; column <= columns; ++column) {
    const PlainPack& pack = instance.plain[static_cast<std::size_t>(column) - 1];
    glp_set_col_kind(problem, column, GLP_IV);
    glp_set_col_bnds(problem, column, GLP_LO, 0.0, 0.0);
    glp_set_obj_coef(problem, column, static_cast<double>(pack.pence));
    places.push_back(column);
    sizes.push_back(static_cast<double>(pack.grams));
  }
  glp_set_mat_row(problem, 1, columns, places.data(), sizes.data());
  glp_iocp options;
  glp_init_iocp(&options);
  options.presolve = GLP_ON;
  options.msg_lev = GLP_MSG_OFF;
  glp_intopt(problem, &options);
  const double price = glp_mip_obj_val(problem);
  glp_delete_prob(problem);
  return static_cast<std::int64_t>(price + 0.5);
}
#endif

using Instances = const std::vector<Instance>& (*)();
using Price = std::int64_t (*)(const Instance&);

/// One instance after the other; the time is that of the median instance, `worst` of the slowest.
void median_instance(benchmark::State& state, const std::vector<Instance>& instances, Price price) {
  std::vector<double> worst(instances.size(), 1e9);
  for (auto _ : state) {
    std::vector<double> seconds;
    for (std::size_t i = 0; i < instances.size(); ++i) {
      const auto start = std::chrono::steady_clock::now();
      benchmark::DoNotOptimize(price(instances[i]));
      const std::chrono::duration<double> passed = std::chrono::steady_clock::now() - start;
      seconds.push_back(passed.count());
      worst[i] = std::min(worst[i], passed.count());
    }
    std::ranges::nth_element(seconds, seconds.begin() + instance_count / 2);
    state.SetIterationTime(seconds[instance_count / 2]);
  }
  state.SetItemsProcessed(state.iterations());
  // The slowest instance in its best run, so that a pause of the machine is no instance.
  state.counters["worst_us"] = 1e6 * *std::ranges::max_element(worst);
}

void lookups(benchmark::State& state, const std::vector<Instance>& instances) {
  constexpr std::size_t needs_each = 1000;
  std::vector<CoverFunction> functions;
  std::vector<const scalepan::CoverTable*> tables;
  std::vector<std::vector<std::int64_t>> needs;
  Draw draw(3);
  for (const Instance& instance : instances) {
    functions.emplace_back(scalepan::purchases_of(instance.packs));
    static_cast<void>(functions.back().period());
    if (functions.back().table() == nullptr) continue;
    tables.push_back(functions.back().table());
    needs.emplace_back();
    for (std::size_t i = 0; i < needs_each; ++i) needs.back().push_back(draw.between(1, 20000));
  }
  for (auto _ : state) {
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < tables.size(); ++i) {
      for (const std::int64_t need : needs[i]) sum += tables[i]->price(need);
    }
    benchmark::DoNotOptimize(sum);
  }
  state.SetItemsProcessed(state.iterations() *
                          static_cast<std::int64_t>(tables.size() * needs_each));
  state.counters["tables"] = static_cast<double>(tables.size());
}

bool add_row(const std::string& name, Instances instances, Price price, int rounds) {
  benchmark::RegisterBenchmark(
      name.c_str(), [=](benchmark::State& state) { median_instance(state, instances(), price); })
      ->UseManualTime()
      ->Iterations(rounds);
  return true;
}

#ifdef SCALEPAN_PEER_GLPK
/// A peer that finds another optimum would make every ratio worthless.
void expect_same(const std::vector<Instance>& instances) {
  for (const Instance& instance : instances) {
    if (price_by_function(instance) == price_by_glpk(instance)) continue;
    throw std::logic_error("GLPK and the cover function differ");
  }
}
#endif

}  // namespace

int main(int argc, char** argv) {
  benchmark::Initialize(&argc, argv);
  add_row("cover/all needs/scalepan", shop_instances, price_by_function, 20);
  add_row("cover/adversarial/scalepan", adversarial_instances, price_by_function, 5);
#ifdef SCALEPAN_PEER_GLPK
  expect_same(shop_instances());
  add_row("cover/all needs/glpk", shop_instances, price_by_glpk, 20);
  add_row("cover/adversarial/glpk", adversarial_instances, price_by_glpk, 1);
#endif
  benchmark::RegisterBenchmark("cover/lookup/scalepan",
                               [](benchmark::State& state) { lookups(state, shop_instances()); });
  benchmark::RunSpecifiedBenchmarks();
}
