#include "food/usda_release.hpp"
#include "fuzz.hpp"

using namespace scalepan;

// Foods, a zero byte, and weights in one of the two layouts.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  const std::size_t cut = std::min(text.find('\0'), text.size());
  const std::string_view weights = text.substr(std::min(cut + 1, text.size()));
  for (const auto layout : {WeightsLayout::weight, WeightsLayout::abbrev}) {
    fuzz::reads_or_refuses([&] {
      Catalog catalog;
      add_release(catalog, {"SR28", {text.substr(0, cut), "foods"}, {weights, "weights"}, layout});
      fuzz::expect(catalog.find("sr28 1") || catalog.food("sr28_1") == nullptr);
    });
  }
  return 0;
}
