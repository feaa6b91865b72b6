#include "fuzz.hpp"
#include "measure/temperature.hpp"
#include "measure/temperature_text.hpp"

using namespace scalepan;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text = fuzz::text_of(data, size);
  fuzz::reads_or_refuses([&] {
    const WrittenTemperature read = parse_temperature(text);
    const std::string shown = told(read);
    const WrittenTemperature again = parse_temperature(shown.substr(0, shown.find(" (")));
    fuzz::expect(again.written.low == read.written.low);
    fuzz::expect(again.written.high == read.written.high);
    fuzz::expect(again.written.scale == read.written.scale);
  });
  fuzz::reads_or_refuses([&] { static_cast<void>(with_both_scales(text)); });
  return 0;
}
