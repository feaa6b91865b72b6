#include "food/yield_test.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <string_view>
#include <utility>

namespace scalepan {

namespace {

/// Amounts of one trial: above and below the line.
struct Pair {
  Quantity above;
  Quantity below;
};

/// Of pairs whose amounts below are above zero, at least one.
TrialRatio ratio_of(const std::vector<Pair>& pairs) {
  TrialRatio ratio;
  Quantity above = pairs.front().above;
  Quantity below = pairs.front().below;
  Quantity sum = above / below;
  ratio.low = ratio.high = sum;
  for (std::size_t i = 1; i < pairs.size(); ++i) {
    const Quantity own = pairs[i].above / pairs[i].below;
    above = above + pairs[i].above;
    below = below + pairs[i].below;
    sum = sum + own;
    ratio.low = std::min(ratio.low, own);
    ratio.high = std::max(ratio.high, own);
  }
  ratio.of_sums = above / below;
  ratio.trials = pairs.size();
  ratio.mean = sum * reciprocal(Rational(pairs.size()));
  return ratio;
}

/// The part of the edible weight that went into the pan.
Rational cooked_part(const YieldTrial& trial) {
  return trial.edible ? trial.pan->coherent() / trial.edible->coherent() : Rational(1);
}

/// The weight at `from` that stands behind the one at `to`; nothing where the trial lacks either.
std::optional<Quantity> behind(const YieldTrial& trial, Stage from, Stage to) {
  if (!trial.at(to)) return std::nullopt;
  if (from == Stage::edible) return trial.pan;
  const auto& weight = trial.at(from);
  const bool past_the_pan = from == Stage::as_purchased && trial.cooked;
  const bool cooked = to == Stage::cooked || to == Stage::served;
  if (!weight || !past_the_pan || !cooked) return weight;
  return *weight * cooked_part(trial);
}

std::optional<YieldShare> share_of(const std::vector<YieldTrial>& trials, Stage from, Stage to) {
  std::vector<Pair> pairs;
  for (const YieldTrial& trial : trials) {
    if (const auto below = behind(trial, from, to)) pairs.push_back({*trial.at(to), *below});
  }
  if (pairs.empty()) return std::nullopt;
  return YieldShare{from, to, ratio_of(pairs)};
}

/// A part over the trials that have it.
struct PartSums {
  PartShare share;
  Quantity sum;  // of the trials' own ratios
};

void add(PartSums& sums, const TrialPart& part, const Quantity& whole) {
  PartShare& share = sums.share;
  const Quantity own = part.weight / whole;
  const bool first = share.ratio.trials == 0;
  share.ratio.low = first ? own : std::min(share.ratio.low, own);
  share.ratio.high = first ? own : std::max(share.ratio.high, own);
  share.weight = first ? part.weight : share.weight + part.weight;
  sums.sum = sums.sum + own;
  if (part.value) share.value = share.value ? *share.value + *part.value : *part.value;
  ++share.ratio.trials;
}

/// Trials without the part count with none of it.
PartShare finished(const PartSums& sums, const Quantity& whole, std::size_t trials) {
  PartShare share = sums.share;
  const Quantity none(0);
  if (share.ratio.trials < trials) share.ratio.low = none;
  share.ratio.of_sums = share.weight / whole;
  share.ratio.mean = sums.sum * reciprocal(Rational(trials));
  share.ratio.trials = trials;
  return share;
}

/// The parts of one stage, in the order in which they appear. Where nothing was served nothing was
/// carved: such a trial says nothing about the parts taken off.
std::vector<PartShare> parts_of(const std::vector<YieldTrial>& trials,
                                std::vector<TrialPart> YieldTrial::* list, Stage stage) {
  std::vector<PartSums> parts;
  std::map<std::pair<YieldWord, std::string_view>, std::size_t> index;
  std::optional<Quantity> sum;
  std::size_t count = 0;
  for (const YieldTrial& trial : trials) {
    if (!trial.at(stage) || (stage == Stage::cooked && !trial.served)) continue;
    const Quantity whole = without_stage(*trial.at(stage));
    sum = sum ? *sum + whole : whole;
    ++count;
    for (const TrialPart& part : trial.*list) {
      const auto [found, fresh] =
          index.emplace(std::pair(part.what, std::string_view(part.name)), parts.size());
      if (fresh) parts.push_back({{part.what, part.name, part.use, stage, {}, {}, {}}, {}});
      add(parts[found->second], part, whole);
    }
  }
  std::vector<PartShare> shares;
  shares.reserve(parts.size());
  for (const PartSums& part : parts) shares.push_back(finished(part, *sum, count));
  return shares;
}

}  // namespace

TrialRatio TrialRatio::rest() const {
  const auto less = [](const Quantity& x) { return Quantity(1 - x.coherent()); };
  return {less(of_sums), less(mean), less(high), less(low), trials};
}

std::string YieldTest::food() const {
  const auto named = std::ranges::find_if(trials_, [](const auto& t) { return !t.food.empty(); });
  return named == trials_.end() ? "" : named->food;
}

std::vector<YieldShare> YieldTest::shares() const {
  constexpr std::array<std::pair<Stage, Stage>, 6> steps{{
      {Stage::as_purchased, Stage::edible},
      {Stage::as_purchased, Stage::drained},
      {Stage::edible, Stage::cooked},
      {Stage::cooked, Stage::served},
      {Stage::as_purchased, Stage::cooked},
      {Stage::as_purchased, Stage::served},
  }};
  std::vector<YieldShare> shares;
  for (const auto& [from, to] : steps) {
    if (auto share = share_of(trials_, from, to)) shares.push_back(*std::move(share));
  }
  return shares;
}

std::vector<PartShare> YieldTest::parts() const {
  std::vector<PartShare> shares = parts_of(trials_, &YieldTrial::cut, Stage::as_purchased);
  for (PartShare& share : parts_of(trials_, &YieldTrial::off, Stage::cooked)) {
    shares.push_back(std::move(share));
  }
  return shares;
}

}  // namespace scalepan
