// Methods: amounts bound in by line id, shares over the steps, temperatures, times that stay.
#include "recipe/method.hpp"

#include <memory>

#include "recipe/reading.hpp"

namespace scalepan {
namespace {

struct StepText {
  std::string text = "Stir.";
  std::vector<std::string> uses = {};
  std::string at = {};
  std::string time = {};
};

const std::vector<std::string> pot_lines{"600 g leeks, trimmed", "200 g pearl barley",
                                         "3 eggs | whole", "salt, to taste"};

/// Steps stand on lines 20, 21, ...; texts in column 12, uses in 40, temperatures in 60, times in
/// 70.
RecipeInput input_with(const std::vector<StepText>& steps,
                       const std::vector<std::string>& lines = pot_lines) {
  RecipeInput input = recipe_input(lines);
  for (const StepText& step : steps) {
    const int line = 20 + static_cast<int>(input.steps.size());
    StepInput made;
    made.text = placed(step.text, line, 12);
    for (const std::string& use : step.uses) made.uses.push_back(placed(use, line, 40));
    if (!step.at.empty()) made.at = placed(step.at, line, 60);
    if (!step.time.empty()) made.time = placed(step.time, line, 70);
    input.steps.push_back(made);
  }
  return input;
}

Recipe with_steps(const std::vector<StepText>& steps,
                  const std::vector<std::string>& lines = pot_lines) {
  return {input_with(steps, lines), shared_pantry()};
}

std::string refusal(const std::vector<StepText>& steps) {
  return told_by([&] { return with_steps(steps); });
}

std::string used(const Recipe& recipe, std::size_t step, std::size_t use) {
  const StepUse& found = recipe.method().at(step).uses.at(use);
  return told(part_of_line(recipe.lines()[found.line], found.share), recipe.catalog());
}

TEST_CASE("method: shares and the rest of a line, in every way to write them") {
  const Recipe recipe = with_steps({{.uses = {"2/3 of leeks", "pearl barley", "the eggs"}},
                                    {.uses = {"rest of the leeks", "all of salt"}}});
  CHECK(used(recipe, 0, 0) == "400 g leeks");  // 600 * 2/3
  CHECK(used(recipe, 0, 1) == "200 g pearl barley");
  CHECK(used(recipe, 0, 2) == "3 eggs");
  CHECK(used(recipe, 1, 0) == "200 g leeks");
  CHECK(used(recipe, 1, 1) == "salt");
  const Recipe halves = with_steps({{.uses = {"half of the leeks", "50 % of pearl_barley"}},
                                    {.uses = {"the rest of leeks", "1/2 of pearl barley"}}});
  for (const std::size_t step : {0U, 1U}) CHECK(used(halves, step, 0) == "300 g leeks");
  CHECK(used(halves, 0, 1) == "100 g pearl barley");
}

TEST_CASE("method: amounts follow the size, and the rule of the line") {
  const Recipe recipe =
      with_steps({{.uses = {"2/3 of leeks", "eggs"}}, {.uses = {"rest of leeks"}}}).scaled(10);
  CHECK(used(recipe, 0, 0) == "1 kg leeks");   // 600 * 10/4 * 2/3
  CHECK(used(recipe, 1, 0) == "500 g leeks");  // 600 * 10/4 * 1/3
  CHECK(used(recipe, 0, 1) == "8 eggs");       // 3 * 10/4 = 7.5, whole
}

TEST_CASE("method: an id is taken before a share that it looks like") {
  RecipeInput input = input_with({{.uses = {"half of leeks"}}});
  input.lines[1].id = placed("half of leeks");
  const Recipe recipe(input, shared_pantry());
  CHECK(used(recipe, 0, 0) == "200 g pearl barley");
}

TEST_CASE("method: temperatures in both scales, in the step and in its text") {
  const Recipe recipe = with_steps({{"Bake to 71 °C.", {}, "350 F", " 30 to 35 min "}});
  const MethodStep& step = recipe.method().front();
  CHECK(step.text == "Bake to 71 °C (≈ 160 °F).");
  REQUIRE(step.at);
  CHECK(told(*step.at) == "350 °F (≈ 177 °C)");
  CHECK(step.time == "30 to 35 min");
  CHECK(recipe.scaled(40).method().front().time == "30 to 35 min");
}

TEST_CASE("method: temperatures that are not told in both scales are to check") {
  const Recipe recipe = with_steps({{.text = "Cool by 20 °C."}, {.text = "Bake at 350 degrees."}});
  CHECK(recipe.method().front().text == "Cool by 20 °C (36 °F).");
  CHECK(method_to_check(recipe) ==
        std::vector<std::string>{"step 2: \"350 degrees\" is not told in both scales"});
}

TEST_CASE("method: a use of no line, with the nearest") {
  CHECK(refusal({{.uses = {"2/3 of leaks"}}}) ==
        "method.line @ pot.toml:20:47: no line of the recipe has the id \"leaks\" (nearest: "
        "leeks)");
  CHECK(refusal({{.uses = {"bay_leaf"}}}) ==
        "method.line @ pot.toml:20:40: no line of the recipe has the id \"bay_leaf\" (write the "
        "id of a line, or a share of it: 2/3 of olive_oil)");
  CHECK(refusal({{.uses = {""}}}).starts_with("method.line @ pot.toml:20:40: "));
}

TEST_CASE("method: shares of a line over the whole, two rests, none left") {
  CHECK(refusal({{.uses = {"2/3 of leeks"}}, {.uses = {"1/2 of leeks"}}}) ==
        "share.over @ pot.toml:21:40: the uses of leeks come to 2/3 + 1/2 = 1 1/6, more than the "
        "whole (make the shares smaller, or let one take the rest)");
  CHECK(refusal({{.uses = {"leeks"}}, {.uses = {"leeks"}}}) ==
        "share.over @ pot.toml:21:40: the uses of leeks come to 1 + 1 = 2, more than the whole "
        "(make the shares smaller, or let one take the rest)");
  CHECK(refusal({{.uses = {"rest of leeks"}}, {.uses = {"rest of leeks"}}}) ==
        "share.two_rests @ pot.toml:21:40: two of the uses of leeks take the rest of it (give one "
        "of them a share)");
  CHECK(refusal({{.uses = {"leeks"}}, {.uses = {"rest of leeks"}}}) ==
        "share.no_rest @ pot.toml:21:40: nothing of leeks is left for the rest: the other uses "
        "come to 1");
  CHECK(refusal({{.uses = {"0 of leeks"}}}) ==
        "method.share @ pot.toml:20:40: \"0 of leeks\" is no share of leeks (write 1/2 of leeks, "
        "or rest of leeks)");
  CHECK(refusal({{.uses = {"2 portions of leeks"}}}) ==
        "method.share @ pot.toml:20:40: \"2 portions of leeks\" is no share of leeks (write 1/2 "
        "of leeks, or rest of leeks)");
}

TEST_CASE("method: times and temperatures that cannot be read") {
  for (const char* time : {"overnight", "35", "0 min", "-5 min", "35 g"}) {
    CAPTURE(time);
    CHECK(refusal({{.time = time}}) ==
          "method.time @ pot.toml:20:70: \"" + std::string(time) +
              "\" is no time (write 35 min, 30 to 35 min or 1 h 10 min; put other words into the "
              "step's text)");
  }
  for (const char* time : {"35 min", "1 h 10 min", "1 1/2 h", "30-35 minutes"}) {
    CAPTURE(time);
    CHECK(refusal({{.time = time}}) == "no error was thrown");
  }
  CHECK(refusal({{.time = "12 minuts"}}) ==
        "unit.unknown @ pot.toml:20:73: unknown unit \"minuts\" (nearest: min)");
  CHECK(refusal({{.at = "hot"}}) ==
        "temperature.unreadable @ pot.toml:20:60: \"hot\" is no temperature (write degrees and "
        "scale: 200 °C, 390 °F, 180 to 200 °C; gas marks are not read)");
  CHECK(refusal({{.text = "Chill to -400 °C."}}) ==
        "temperature.below_zero @ pot.toml:20:21: -400 °C is below absolute zero, -273.15 °C");
  CHECK(refusal({{.text = " "}}) ==
        "method.text @ pot.toml:20:12: a step of the method has no text");
}

TEST_CASE("method: lines that no step uses, and parts that are left, are to check") {
  CHECK(method_to_check(with_steps({{.uses = {"2/3 of leeks", "eggs", "salt"}}})) ==
        std::vector<std::string>{"leeks: the steps of the method use 2/3 of it",
                                 "pearl_barley: no step of the method uses it"});
  CHECK(method_to_check(with_steps({{.uses = {"leeks", "salt"}}})) ==
        std::vector<std::string>{"pearl_barley, eggs: no step of the method uses them"});
  CHECK(method_to_check(with_steps({{"Cook all of it."}})).empty());
  CHECK(method_to_check(with_steps({})).empty());
  CHECK(method_to_check(with_steps({{.uses = {"1/3 of leeks", "pearl barley"}},
                                    {.uses = {"rest of leeks", "eggs", "salt"}}}))
            .empty());
}

TEST_CASE("method: what is left of a base is to check under the base's name") {
  RecipeInput dish = recipe_input({"1/2 of the broth", "200 g pearl barley"});
  auto broth = std::make_shared<const Recipe>(
      input_with({{.uses = {"leeks"}}}, {"400 g leeks", "2 onions"}), shared_pantry());
  dish.bases.push_back({"broth", broth, {}});
  CHECK(method_to_check(Recipe(dish, shared_pantry())) ==
        std::vector<std::string>{"broth.onions: no step of the method uses it"});
}

TEST_CASE("method: the remark on times stands at every size but a tested one") {
  RecipeInput input = input_with({{.time = "20 min"}});
  const auto remark = [&](const Rational& portions) {
    return times_remark(Recipe(input, shared_pantry()).scaled(portions));
  };
  CHECK(remark(4) ==
        "times are as written for 4 portions, no tested size is stated, and they are not scaled");
  input.tested_at = {4};
  CHECK(remark(4).empty());
  CHECK(remark(40) == "times are those of the tested 4 portions and are not scaled");
  input.tested_at = {4, 12, 20};
  CHECK(remark(12).empty());
  CHECK(remark(40) == "times are those of the tested 4, 12 and 20 portions and are not scaled");
  input.steps.front().time = {};
  CHECK(remark(40).empty());
}

}  // namespace
}  // namespace scalepan
