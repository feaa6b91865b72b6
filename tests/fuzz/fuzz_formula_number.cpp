#include "exact/number_text.hpp"
#include "fuzz.hpp"

using namespace scalepan;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  fuzz::reads_or_refuses([&] {
    const Rational x = parse_formula_number(text);
    // Long results may pass the digit limit of what can be read back.
    if (x.is_word()) fuzz::expect(parse_formula_number(fraction_text(x)) == x);
  });
  return 0;
}
