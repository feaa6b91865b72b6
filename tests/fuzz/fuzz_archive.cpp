#include "bindings/archive.hpp"
#include "bindings/archive_shared.hpp"
#include "costing/label.hpp"
#include "costing/pack_prices.hpp"
#include "food/yield_test.hpp"
#include "fuzz.hpp"
#include "recipe/written_line.hpp"
#include "sheet/why_tree.hpp"

using namespace scalepan;
using namespace scalepan::bindings;

namespace {

class NoneBeside final : public Beside {
 public:
  void give(Shared /*kind*/, const std::shared_ptr<const void>& /*object*/) override {}
  std::shared_ptr<const void> take(Shared /*kind*/) override { fail_damaged(); }
  std::shared_ptr<const Catalog> base(const std::string& name) override {
    if (!name.empty()) fail_damaged();
    return std::make_shared<const Catalog>();
  }
};

template <typename T>
std::string written(T& value) {
  NoneBeside none;
  Archive archive(Purpose::keeping, none);
  pass(archive, value);
  return std::move(archive.written());
}

template <typename T>
T read(std::string_view bytes) {
  NoneBeside none;
  Archive archive(bytes, none);
  T value;
  pass(archive, value);
  archive.expect_end();
  return value;
}

/// What bytes say is written in bytes that say the same.
template <typename T>
void try_reading(std::string_view bytes) {
  fuzz::reads_or_refuses([&] {
    auto value = read<T>(bytes);
    const std::string once = written(value);
    auto again = read<T>(once);
    fuzz::expect(written(again) == once);
  });
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view bytes = fuzz::text_of(data, size);
  fuzz::reads_or_refuses([&] { static_cast<void>(opened("0.1.0/1", bytes)); });
  try_reading<Line>(bytes);
  try_reading<WrittenLine>(bytes);
  try_reading<std::vector<YieldTrial>>(bytes);
  try_reading<Label>(bytes);
  try_reading<Why>(bytes);
  try_reading<PackPrice>(bytes);
  try_reading<std::shared_ptr<const RecipeInput>>(bytes);
  try_reading<std::shared_ptr<const Catalog>>(bytes);
  try_reading<WordColumn>(bytes);
  return 0;
}
