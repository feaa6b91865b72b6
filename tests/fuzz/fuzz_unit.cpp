#include "fuzz.hpp"
#include "measure/unit_text.hpp"

using namespace scalepan;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  for (const Measures measures : {Measures::unstated, Measures::us}) {
    fuzz::reads_or_refuses([&] {
      const Unit unit = parse_unit(text, measures);
      if (!unit.symbol().empty()) fuzz::expect(parse_unit(unit.symbol()) == unit);
    });
  }
  return 0;
}
