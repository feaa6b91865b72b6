// Lines that are read wrong. Each case says what should be read and is expected to fail; once it
// passes, it belongs into the tables.
#include "recipe/reading.hpp"
#include "recipe/written.hpp"

namespace scalepan {
namespace {

TEST_CASE("written, open: a stage in full stops at the end of the line", "[!shouldfail]") {
  CHECK(written_of("1 kg leeks A.P.").stage == Stage::as_purchased);
}

TEST_CASE("written, open: no stage in full stops belongs to the food", "[!shouldfail]") {
  CHECK(written_of("1 kg leeks E.P.").food() == "leeks");
}

TEST_CASE("written, open: `or so` behind the food is a hedge", "[!shouldfail]") {
  CHECK(written_of("2 lb leeks or so").about);
}

TEST_CASE("written, open: `if desired` without a comma is optional", "[!shouldfail]") {
  CHECK(written_of("1 onion if desired").optional);
}

TEST_CASE("written, open: an empty box in front belongs to a list", "[!shouldfail]") {
  CHECK(written_of("[ ] 500 g leeks").food() == "leeks");
}

TEST_CASE("written, open: a row of stars separates", "[!shouldfail]") {
  CHECK(written_of("***").kind == LineKind::separator);
}

TEST_CASE("written, open: fat cloves are cloves", "[!shouldfail]") {
  CHECK(written_of("2 fat cloves garlic").unit == "clove");
}

TEST_CASE("written, open: the words that leave the amount open are kept", "[!shouldfail]") {
  CHECK_FALSE(written_of("a little milk").notes.empty());
}

}  // namespace
}  // namespace scalepan
