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
    made.add(Food{"lemon_juice", "lemon juice", "lemon juice", "", "", {}, {}, {}});
    for (const char* food : {"leek", "onion", "garlic", "lemon_juice"}) {
      made.add(FoodName{made.food(food)->name, made.food(food)->plural, "", food, false});
    }
    return made;
  }();
  return catalog;
}

/// What a reading promises, whatever the text.
void expect_sound(const WrittenLine& line) {
  if (line.kind != LineKind::ingredient) return;
  fuzz::expect(!line.foods.empty());
  for (const std::string& food : line.foods) fuzz::expect(!food.empty());
  for (const auto& bound : {line.low, line.high}) fuzz::expect(!bound || bound->sign() > 0);
  if (line.low && line.high) fuzz::expect(*line.low <= *line.high);
  if (line.has_amount()) fuzz::expect(!line.unit.empty());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(fuzz::text_of(data, size));
  for (const Reading reading : {Reading{Measures::us, DecimalMark::point},
                                Reading{Measures::unstated, DecimalMark::comma}}) {
    fuzz::reads_or_refuses([&] {
      const WrittenLine written = read_written_line(text, reading, small_catalog());
      expect_sound(written);
      if (written.kind != LineKind::ingredient) return;
      LineInput input;
      input.line.text = text;
      const Line line = line_from(written, input, reading, small_catalog());
      fuzz::expect(!line.measured || line.written.coherent().sign() > 0);
      static_cast<void>(told(line, small_catalog()));
    });
  }
  return 0;
}
