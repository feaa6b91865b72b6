// What a line's text is read as.
#include "recipe/line.hpp"

#include "recipe/reading.hpp"

namespace scalepan {
namespace {

struct Row {
  const char* text;
  const char* amount;  // with its stage
  const char* unit;    // as shown
  const char* food;
  const char* detail;  // of conversions
};

// A bare count is as purchased; a weight or volume with a preparation is at the preparation's
// stage; everything else is as purchased.
TEST_CASE("lines: amount, unit, stage, food and detail") {
  for (const Row& row : {
           Row{"500 g leeks", "500 g AP", "g AP", "leeks", ""},
           {"500 g leeks, trimmed", "500 g EP", "g EP", "leeks", ""},
           {"500g leeks, roasted", "500 g cooked", "g cooked", "leeks", ""},
           {"240 g chickpeas, drained", "240 g drained", "g drained", "chickpeas", ""},
           {"500 g leeks, boiled and drained", "500 g cooked", "g cooked", "leeks", ""},
           {"500 g leeks, in season", "500 g AP", "g AP", "leeks", ""},
           {"500 g trimmed leeks", "500 g EP", "g EP", "leeks", ""},
           {"500 g Trimmed Sliced Leeks", "500 g EP", "g EP", "Leeks", ""},
           {"4 eggs", "4 piece AP", "piece AP", "eggs", ""},
           {"4 eggs, beaten", "4 piece AP", "piece AP", "eggs", ""},
           {"1/2 onion", "1/2 piece AP", "piece AP", "onion", ""},
           {"1 dozen eggs", "12 piece AP", "dozen AP", "eggs", ""},
           {"1 dozen eggs, beaten", "12 piece AP", "dozen AP", "eggs", ""},
           {"3 large eggs", "3 piece AP", "piece AP", "eggs", "large"},
           {"3 Medium-sized onions", "3 piece AP", "piece AP", "onions", "medium-sized"},
           {"3 cloves garlic, crushed", "3 piece AP", "piece AP", "garlic", "clove"},
           {"3 cloves of garlic", "3 piece AP", "piece AP", "garlic", "clove"},
           {"1 clove garlic", "1 piece AP", "piece AP", "garlic", "clove"},
           {"2 large cloves garlic", "2 piece AP", "piece AP", "garlic", "clove"},
           {"2 cups flour", "500 mL AP", "cup_metric AP", "flour", ""},
           {"2 cups flour, sifted", "500 mL EP", "cup_metric EP", "flour", "sifted"},
           {"1 cup onions, finely chopped", "250 mL EP", "cup_metric EP", "onions", "chopped"},
           {"1 lb 4 oz leeks", "20 oz AP", "lb AP", "leeks", ""},
           {"2 x 400 g tins chickpeas", "800 g AP", "g AP", "chickpeas", ""},
           {"400 g tin of chickpeas", "400 g AP", "g AP", "chickpeas", ""},
           {"1 kg of leeks", "1000 g AP", "kg AP", "leeks", ""},
           {"1 1/2 tbsp milk", "22.5 mL AP", "tbsp_metric AP", "milk", ""},
           {"2 lb. leeks", "2 lb AP", "lb AP", "leeks", ""},
           {"500 g samphire", "500 g AP", "g AP", "samphire", ""},
           {"  500 g   leeks ", "500 g AP", "g AP", "leeks", ""},
           {"3 gâteaux", "3 piece AP", "piece AP", "gâteaux", ""},
       }) {
    INFO(row.text);
    const Line line = line_of(row.text);
    CHECK(line.written == q(row.amount));
    CHECK(line.written_low == line.written);
    CHECK(line.written.unit() == u(row.unit));
    CHECK(line.food == row.food);
    CHECK(line.detail() == row.detail);
    CHECK(line.amount == line.written);
    CHECK(line.text == row.text);
  }
}

TEST_CASE("lines: the food is found in the catalogue, and close relatives are marked") {
  CHECK(line_of("500 g leeks").food_id == "leek");
  CHECK(line_of("2 zucchini").food_id == "courgette");
  CHECK(line_of("500 g samphire").food_id.empty());
  CHECK_FALSE(line_of("2 onions").near);
  CHECK(line_of("2 red onions").food_id == "onion");
  CHECK(line_of("2 red onions").near);
  CHECK(line_of("220 g pearl barley").food_id == "pearl_barley");
}

TEST_CASE("lines: containers and their number") {
  const Line tins = line_of("2 x 400 g tins chickpeas, drained");
  CHECK(tins.container == "tin");
  CHECK(tins.containers == Rational(2));
  CHECK(line_of("400 g can chickpeas").container == "can");
  CHECK(line_of("400 g can chickpeas").containers == Rational(1));
  const Line bare = line_of("2 tins chickpeas");
  CHECK(bare.container == "tin");
  CHECK(bare.containers == Rational(0));
  CHECK(bare.written == q("2 piece AP"));
  CHECK(line_of("3 cloves garlic").container.empty());
  CHECK(line_of("3 cloves garlic").noun == "clove");
}

TEST_CASE("lines: ranges keep both ends, and the high one is needed") {
  const Line line = line_of("2-3 leeks, sliced");
  CHECK(line.written == q("3 piece AP"));
  CHECK(line.written_low == q("2 piece AP"));
  CHECK(line.is_range());
  CHECK_FALSE(line_of("2 leeks").is_range());
  CHECK(line_of("400 to 500 g leeks, trimmed").written_low == q("400 g EP"));
}

TEST_CASE("lines: preparation, note, optional") {
  const Line line = line_of("500 g trimmed leeks, washed well (white part)");
  CHECK(line.preparation == "trimmed, washed well");
  CHECK(line.preparations == std::vector<std::string>{"trimmed", "washed"});
  CHECK(line.note == "white part");
  CHECK_FALSE(line.optional);
  const Line optional = line_of("2 eggs (optional)");
  CHECK(optional.optional);
  CHECK(optional.note.empty());
  CHECK(line_of("500 g leeks, cut in 2 cm pieces").preparation == "cut in 2 cm pieces");
}

TEST_CASE("lines: rules in the text") {
  CHECK(line_of("4 eggs | one per portion").rule == Rule{RuleKind::per_portions, 1, 1});
  CHECK(line_of("1 leek, sliced (large) | whole").rule.kind == RuleKind::whole);
  CHECK(line_of("1 leek, sliced (large) | whole").size == "large");
  CHECK(line_of("500 mL oil for frying | 15 % taken up").rule == Rule{.taken_up = Rational(3, 20)});
  CHECK(line_of("2 sprigs thyme | fixed").rule.kind == RuleKind::fixed);
  CHECK(line_of("500 g leeks").rule == Rule{});
}

TEST_CASE("lines: a table adds id, stage, state, rule, note and optional") {
  LineInput input = input_of("2 cups flour");
  input.id = placed("dredge");
  input.stage = placed("EP");
  input.state = placed("sifted");
  input.rule = placed("fixed");
  input.note = "for the board";
  input.optional = true;
  const Line line = line_of(input);
  CHECK(line.id == "dredge");
  CHECK(line.written == q("500 mL EP"));
  CHECK(line.state == "sifted");
  CHECK(line.rule.kind == RuleKind::fixed);
  CHECK(line.note == "for the board");
  CHECK(line.optional);
}

TEST_CASE("lines: ids are made from the food") {
  CHECK(line_of("220 g pearl barley").id == "pearl_barley");
  CHECK(line_of("3 cloves garlic, crushed").id == "garlic");
  CHECK(id_of_name("Pearl  Barley") == "pearl_barley");
  CHECK(id_of_name("half-fat crème fraîche!") == "half_fat_crème_fraîche");
  CHECK(id_of_name("(1) leek's") == "1_leek_s");
  CHECK(id_of_name("") == "");
}

}  // namespace
}  // namespace scalepan
