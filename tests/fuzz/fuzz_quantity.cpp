#include "fuzz.hpp"
#include "measure/amount.hpp"
#include "measure/told.hpp"

using namespace scalepan;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  fuzz::reads_or_refuses([&] {
    const Quantity q = parse_quantity(text, Measures::us);
    static_cast<void>(tell(q));
    if (q.value().is_word()) fuzz::expect(parse_quantity(q.text()) == q);
  });
  return 0;
}
