// Marks, stages and hedges that were once read into the food.
#include "recipe/reading.hpp"
#include "recipe/written.hpp"

namespace scalepan {
namespace {

TEST_CASE("written: a stage in full stops at the end of the line") {
  CHECK(written_of("1 kg leeks A.P.").stage == Stage::as_purchased);
}

TEST_CASE("written: no stage in full stops belongs to the food") {
  CHECK(written_of("1 kg leeks E.P.").food() == "leeks");
}

TEST_CASE("written: `or so` behind the food is a hedge") {
  CHECK(written_of("2 lb leeks or so").about);
}

TEST_CASE("written: `if desired` without a comma is optional") {
  CHECK(written_of("1 onion if desired").optional);
}

TEST_CASE("written: an empty box in front belongs to a list") {
  CHECK(written_of("[ ] 500 g leeks").food() == "leeks");
}

TEST_CASE("written: a row of stars separates") {
  CHECK(written_of("***").kind == LineKind::separator);
}

TEST_CASE("written: fat cloves are cloves") {
  CHECK(written_of("2 fat cloves garlic").unit == "clove");
}

TEST_CASE("written: the words that leave the amount open are kept") {
  CHECK(written_of("a little milk").vague == "a little");
}

}  // namespace
}  // namespace scalepan
