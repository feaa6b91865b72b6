#include "fuzz.hpp"
#include "packs/offer.hpp"

using namespace scalepan;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string text(fuzz::text_of(data, size));
  for (const char* stage : {"AP", "drained"}) {
    fuzz::reads_or_refuses([&] {
      PriceRow row;
      row.item.text = "beans";
      row.sold_as.text = stage;
      row.pack.text = text;
      row.price.text = "1";
      row.keeps.text = "no";
      const Offer offer = read_offer(row, Measures::us);
      for (const PackContent& content : offer.pack.contents) {
        fuzz::expect(content.amount.coherent().sign() > 0);
      }
    });
  }
  return 0;
}
