// docs/formulas.md says what is true: its examples, its errors, its functions and its grammar.
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>

#include "check.hpp"
#include "sheet/cells.hpp"
#include "sheet/ebnf.hpp"
#include "sheet/unit_memo.hpp"

using namespace scalepan;

namespace {

const std::string& page() {
  static const std::string text = [] {
    const auto path = std::filesystem::path(__FILE__).parent_path() / "../../../docs/formulas.md";
    std::ifstream stream(path, std::ios::binary);
    return std::string{std::istreambuf_iterator<char>(stream), {}};
  }();
  return text;
}

/// The lines of all fenced blocks of that kind.
std::vector<std::string> lines_of(const std::string& kind) {
  std::vector<std::string> lines;
  std::istringstream stream(page());
  bool inside = false;
  for (std::string line; std::getline(stream, line);) {
    if (line.starts_with("```")) {
      inside = line == "```" + kind;
    } else if (inside) {
      lines.push_back(line);
    }
  }
  return lines;
}

std::string block(const std::string& kind) {
  std::string text;
  for (const std::string& line : lines_of(kind)) text += line + "\n";
  return text;
}

std::string trimmed(const std::string& text) {
  const std::size_t start = text.find_first_not_of(' ');
  return start == std::string::npos ? ""
                                    : text.substr(start, text.find_last_not_of(' ') - start + 1);
}

const Cells& cells_of_page() {
  static const Cells cells = [] {
    Cells made({});
    for (const std::string& line : lines_of("cells")) {
      const std::size_t gap = line.find(' ');
      const std::string name = line.substr(0, gap);
      const std::string value = trimmed(line.substr(gap));
      if (name.starts_with("sum(")) {
        made.add_total(name.substr(4, name.size() - 5), value);
      } else {
        made.add(name, value);
      }
    }
    return made;
  }();
  return cells;
}

std::size_t character_end(std::string_view text, std::size_t at) {
  const bool one = at < text.size() && text[at] != '"' && text[at] >= ' ';
  return one ? at + 1 : at;
}

std::size_t unit_name_end(std::string_view text, std::size_t at) {
  std::size_t end = at;
  while (end < text.size() && ebnf::in_word(text[end])) ++end;
  return names_unit(text.substr(at, end - at)) ? end : at;
}

const ebnf::Grammar& grammar() {
  static const std::string text = block("ebnf");
  static const ebnf::Grammar read(
      text, {{"any character but quotes and control characters",
              {character_end, {"x", " ", "+", "if", "'", "(", "1"}}},
             {"the name of a unit, in letters", {unit_name_end, {"kg", "mL", "piece", "EP"}}}});
  return read;
}

/// Every name is a number, so that a formula is refused for its form or its kinds alone.
class AllNumbers final : public Names {
 public:
  std::optional<Found> find(std::string_view /*name*/) const override {
    return Found{0, quantity_type(Unit())};
  }
  std::optional<Found> find_total(std::string_view column) const override { return find(column); }
  std::vector<std::string> nearest(std::string_view /*name*/) const override { return {}; }
};

/// The code of the refusal, or empty.
std::string code_of(std::string_view text) {
  static Compiler compiler(std::make_shared<const FunctionTable>());
  try {
    static_cast<void>(compiler.compile(text, AllNumbers()));
  } catch (const Error& error) {
    return error.code();
  }
  return {};
}

}  // namespace

TEST_CASE("docs/formulas: examples give what the page says") {
  const std::string arrow = "\u2192";
  int examples = 0;
  for (const std::string& line : lines_of("examples")) {
    INFO(line);
    const std::size_t at = line.find(arrow);
    REQUIRE(at != std::string::npos);
    CHECK(cells_of_page().told(trimmed(line.substr(0, at))) ==
          trimmed(line.substr(at + arrow.size())));
    ++examples;
  }
  CHECK(examples > 30);
}

TEST_CASE("docs/formulas: errors say what the page says, where it says") {
  const std::vector<std::string> lines = lines_of("errors");
  for (std::size_t i = 0; i + 1 < lines.size(); i += 2) {
    INFO(lines[i]);
    const std::size_t mark = lines[i + 1].find('^');
    const Thrown thrown = thrown_by([&] { return cells_of_page().told(lines[i]); });
    const std::string hint = thrown.hint.empty() ? "" : " (" + thrown.hint + ")";
    CHECK(thrown.code + ": " + thrown.message + hint == lines[i + 1].substr(mark + 2));
    CHECK(thrown.offset == mark);
  }
  CHECK(lines.size() >= 24);
}

TEST_CASE("docs/formulas: every code stands on the page") {
  for (const std::string code :
       {"unreadable", "doubtful", "name", "function", "arguments", "column", "type", "dimension",
        "power", "deep", "long", "undecided", "unbounded"}) {
    CHECK(page().find("formula." + code) != std::string::npos);
  }
  const Thrown thrown =
      thrown_by([&] { return cells_of_page().told(std::string(1'000'000, '1')); });
  CHECK(page().find("`" + thrown.message + " (" + thrown.hint + ")`") != std::string::npos);
}

TEST_CASE("docs/formulas: the table of functions is the one there is") {
  const FunctionTable table;
  std::string rows;
  for (const Function& function : table.all()) {
    rows += "| `" + std::string(function.shape) + "` | " + std::string(function.told) + " |\n";
  }
  CHECK(page().find("|---|---|\n" + rows + "\n") != std::string::npos);
}

TEST_CASE("docs/formulas: whatever the grammar makes is read") {
  const std::map<std::string, std::vector<std::string>> given{
      {"function", {"min", "max", "abs", "up_to_multiple", "sum"}},
      {"unit_word", {"g", "kg", "EP", "GBP", "portion"}}};
  int accepted = 0;
  for (std::uint32_t seed = 0; seed < 20'000; ++seed) {
    const std::string formula = ebnf::Maker(grammar(), seed, given).sentence("formula");
    const std::string code = code_of(formula);
    INFO(formula);
    CHECK(code != "formula.unreadable");
    if (code.empty()) ++accepted;
  }
  CHECK(accepted > 800);
}

TEST_CASE("docs/formulas: whatever the grammar does not make is refused") {
  static const std::vector<std::string> words{
      "a",   "leeks.need", "min", "sum", "if", "then", "else", "and",   "or", "not", "yes", "2",
      "1/2", "0.5",        ".5",  "2 g", "kg", "EP",   "/",    "%",     "(",  ")",   ",",   "+",
      "-",   "*",          "^",   "<",   "<=", "=",    "<>",   "\"x\"", "\"", "[g]", "2.",  "/kg"};
  std::mt19937 random(11);
  int sentences = 0;
  int unreadable = 0;
  for (int trial = 0; trial < 40'000; ++trial) {
    std::string soup;
    const std::size_t length = 1 + random() % 7;
    for (std::size_t i = 0; i < length; ++i) {
      const std::string& word = words[random() % words.size()];
      const bool together = !soup.empty() && ebnf::in_word(soup.back()) && ebnf::in_word(word[0]);
      if (together || random() % 2 == 0) soup += ' ';
      soup += word;
    }
    INFO(soup);
    const std::string code = code_of(soup);
    if (ebnf::Recogniser(grammar(), soup).derives("formula")) {
      CHECK(code != "formula.unreadable");
      ++sentences;
    } else {
      CHECK(code != "");
      if (code == "formula.unreadable" || code == "formula.doubtful") ++unreadable;
    }
  }
  CHECK(sentences > 1'000);
  CHECK(unreadable > 20'000);
}
