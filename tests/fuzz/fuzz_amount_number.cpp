#include "exact/number_text.hpp"
#include "fuzz.hpp"

using namespace scalepan;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  fuzz::reads_or_refuses([&] {
    const Rational x = parse_amount_number(text);
    fuzz::expect(parse_amount_number(mixed_text(x)) == x);
  });
  fuzz::reads_or_refuses([&] {
    std::size_t position = 0;
    const auto x = read_amount_number(text, position, DecimalMark::comma);
    fuzz::expect(position <= text.size() && (x.has_value() || position == 0));
  });
  return 0;
}
