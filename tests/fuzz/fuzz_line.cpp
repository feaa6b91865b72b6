#include "fuzz.hpp"
#include "recipe/line.hpp"

using namespace scalepan;

namespace {

const Catalog& small_catalog() {
  static const Catalog catalog = [] {
    Catalog made;
    made.add(Food{"leek", "leek", "leeks", "", "", {}, {}, {}});
    made.add(Food{"onion", "onion", "onions", "chopped", "medium", {}, {}, {}});
    made.add(Food{"garlic", "garlic", "garlic", "", "clove", {}, {}, {}});
    for (const char* food : {"leek", "onion", "garlic"}) {
      made.add(FoodName{food, made.food(food)->plural, "", food, false});
    }
    return made;
  }();
  return catalog;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(fuzz::text_of(data, size));
  fuzz::reads_or_refuses([&] {
    LineInput input;
    input.line.text = text;
    const Line line = read_line(input, Measures::metric, small_catalog());
    fuzz::expect(line.written.coherent().sign() > 0);
    fuzz::expect(!line.food.empty());
    static_cast<void>(told(line, small_catalog()));
  });
  return 0;
}
