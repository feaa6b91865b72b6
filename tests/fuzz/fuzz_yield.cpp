#include <algorithm>
#include <array>
#include <vector>

#include "food/yield_test.hpp"
#include "fuzz.hpp"

using namespace scalepan;

namespace {

/// A row a line, its fields parted by bars.
YieldRow row_of(std::string_view line) {
  std::array<std::string, 5> fields;
  for (std::string& field : fields) {
    const std::size_t end = std::min(line.find('|'), line.size());
    field = line.substr(0, end);
    line.remove_prefix(std::min(end + 1, line.size()));
  }
  YieldRow row;
  row.trial.text = fields[0];
  row.what.text = fields[1];
  row.part.text = fields[2];
  row.weight.text = fields[3];
  row.value.text = fields[4];
  return row;
}

void expect_between(const TrialRatio& ratio) {
  fuzz::expect(ratio.low <= ratio.of_sums && ratio.of_sums <= ratio.high);
  fuzz::expect(ratio.low <= ratio.mean && ratio.mean <= ratio.high);
}

/// Weights are above zero, each stage closes, ratios lie in their spread, no value is below zero.
void expect_sound(const YieldTest& test) {
  for (const YieldShare& share : test.shares()) {
    expect_between(share.ratio);
    fuzz::expect(share.ratio.low.coherent().sign() > 0);
  }
  for (const PartShare& part : test.parts()) {
    expect_between(part.ratio);
    fuzz::expect(part.ratio.low.coherent().sign() >= 0);
  }
  for (const StageCost& cost : test.costs()) fuzz::expect(cost.value.coherent().sign() >= 0);
  for (const YieldTrial& trial : test.trials()) {
    if (!trial.bought) continue;
    Quantity sum = without_stage(*trial.usable());
    for (const TrialPart& part : trial.cut) sum = sum + part.weight;
    fuzz::expect(sum == without_stage(*trial.bought));
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::string_view text = fuzz::text_of(data, size);
  fuzz::reads_or_refuses([&] {
    std::vector<WeighedRow> rows;
    while (!text.empty()) {
      const std::size_t end = std::min(text.find('\n'), text.size());
      rows.push_back(read_yield_row(row_of(text.substr(0, end)), Measures::us));
      text.remove_prefix(std::min(end + 1, text.size()));
    }
    expect_sound(YieldTest(make_trials(rows)));
  });
  return 0;
}
