// Lines told to a cook.

#include "measure/count_nouns.hpp"
#include "measure/told.hpp"
#include "recipe/line.hpp"

namespace scalepan {

namespace {

bool is_count(const Line& line) {
  return line.written.dimension().without_stages() == dimension::piece();
}

/// The number of a count, without the word `pieces`; dozens stay dozens.
std::string count_text(const Quantity& count) {
  const std::string text = tell(count).text;
  const bool dozens = count.unit().without_stages().symbol() != "piece";
  return dozens ? text : text.substr(0, text.rfind(' '));
}

std::string amount_text(const Quantity& amount, bool count) {
  return count ? count_text(amount) : tell(amount).text;
}

/// Singular or plural by the catalogue; as written where the catalogue has neither.
std::string food_text(const Line& line, const Catalog& catalog, bool many) {
  if (!is_count(line) || !line.counted_noun().empty() || line.food_id.empty()) return line.food;
  const auto found = catalog.find(line.food);
  if (!found || found->name == nullptr) return line.food;
  return many ? found->name->plural : found->name->name;
}

std::string noun_text(const Line& line, bool many) {
  const std::string& noun = line.counted_noun();
  if (noun.empty()) return {};
  return " " + std::string(many ? plural_of_noun(noun) : noun);
}

/// `2 x 400 g tins`, where containers of one size give the amount.
std::string containers_text(const Line& line) {
  if (line.container.empty() || line.containers.is_zero()) return {};
  const Quantity each = line.written * (Rational(1) / line.containers);
  const Rational count = line.amount.coherent() / each.coherent();
  const std::string word(count > Rational(1) ? plural_of_noun(line.container) : line.container);
  return tell(Quantity(count)).text + " x " + tell(each).text + " " + word;
}

std::string amount_part(const Line& line) {
  const bool count = is_count(line);
  std::string text;
  if (!line.hedge.empty()) text = line.hedge + " ";
  if (line.is_range()) text += amount_text(line.amount_low, count) + " to ";
  text += amount_text(line.amount, count);
  if (!line.fill.empty()) text += " (" + line.fill + ")";
  if (!line.size.empty()) text += " " + line.size;
  return text;
}

/// Its weight with what it stands in would read as that of the drained food.
bool in_containers_only(const Line& line) {
  return line.drained_later() && !containers_text(line).empty() && !line.is_range();
}

/// The food with what it is counted by, and the part of it that is wanted.
std::string food_part(const Line& line, const Catalog& catalog) {
  const bool count = is_count(line);
  const bool dozens = count && !(line.amount.unit().ratio() == Rational(1));
  const bool many = dozens || line.amount.value() > Rational(1);
  std::string amount = line.measured ? amount_part(line) + noun_text(line, many) : line.vague;
  if (in_containers_only(line)) amount = containers_text(line);
  const std::string food = food_text(line, catalog, many);
  const std::string whole = amount.empty() ? food : amount + " " + food;
  if (line.part.empty()) return whole;
  const auto yield = line.part_amount();
  return line.part + " of " + whole + (yield ? ", " + tell(*yield).text : "");
}

}  // namespace

std::string told(const Line& line, const Catalog& catalog) {
  const bool to_taste = line.rule.kind == RuleKind::to_taste;
  std::string text = to_taste ? line.food : food_part(line, catalog);
  if (!line.preparation.empty()) text += ", " + line.preparation;
  if (to_taste) text += ", to taste (" + tell(line.amount).text + " allowed for)";
  const std::string containers = containers_text(line);
  if (!containers.empty() && !in_containers_only(line)) text += " (" + containers + ")";
  if (!line.note.empty()) text += " (" + line.note + ")";
  if (line.optional) text += " (optional)";
  return text;
}

}  // namespace scalepan
