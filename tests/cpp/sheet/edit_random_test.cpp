#include <map>
#include <random>
#include <set>

#include "catch.hpp"
#include "sheet/sheets.hpp"

using namespace scalepan;

namespace {

/// Every cell's figure, or the error it holds.
std::map<std::string, std::string> figures_of(const Sheet& sheet) {
  std::map<std::string, std::string> figures;
  for (const std::string& name : sheet.cells()) {
    try {
      figures[name] = sheet.told(name);
    } catch (const Error& error) {
      figures[name] = error.what();
    }
  }
  return figures;
}

/// What a sheet tells of itself in full: two sheets that tell the same are the same.
std::string told(const Sheet& sheet) {
  std::string text;
  for (const std::string& name : sheet.cells()) text += name + " = " + sheet.formula(name) + "\n";
  for (const std::string& block : sheet.blocks()) {
    for (const std::string& column : sheet.columns(block)) text += block + "." + column + " ";
    for (const std::string& row : sheet.rows(block)) text += row + " ";
  }
  for (const auto& [name, figure] : figures_of(sheet)) text += name + ": " + figure + "\n";
  return text;
}

class Script {
 public:
  explicit Script(unsigned seed) : random_(seed), sheet_(empty_sheet()) {
    sheet_->apply({Set{"a0", number(3)},
                   AddBlock{"lines",
                            {{"size", quantity_type(Unit())},
                             {"own", quantity_type(Unit())},
                             {"twice", std::nullopt, "size * 2 - own"},
                             {"share", std::nullopt, "12 / size + twice"}}},
                   Define{"f0", "a0 * 2"}});
  }

  /// How many changes were made.
  int run(int steps) {
    for (int i = 0; i < steps; ++i) step();
    return made_;
  }

 private:
  int draw(int most) { return std::uniform_int_distribution<int>(0, most)(random_); }
  std::string given() { return "a" + std::to_string(draw(3)); }
  std::string formula() { return "f" + std::to_string(draw(6)); }
  std::string row() { return "r" + std::to_string(draw(4)); }
  std::string name() {
    const std::vector<std::string> names = sheet_->cells();
    if (names.empty()) return "a0";
    return names[static_cast<std::size_t>(draw(static_cast<int>(names.size()) - 1))];
  }
  CellValue value() { return number(Rational(draw(6) - 2, 1 + draw(2))); }

  std::string text() {
    switch (draw(6)) {
      case 0:
        return name() + " + " + name();
      case 1:
        return "12 / " + name();
      case 2:
        return "sum(lines.twice) - " + name();
      case 3:
        return "sum(lines.share)";
      case 4:
        return "if " + name() + " > 1 then " + name() + " else sum(lines.own)";
      case 5:
        return "max(" + name() + ", " + name() + ", 2)";
      default:
        return name() + " * 2 - 1/3";
    }
  }

  Change change() {
    switch (draw(13)) {
      case 0:
      case 1:
        return Set{given(), value()};
      case 2:
      case 3:
        return Define{formula(), text()};
      case 4:
        return PutOverride{name(), {value(), "measured", "", ""}};
      case 5:
        return Release{name()};
      case 6:
        return Remove{name()};
      case 7:
        return Rename{name(), formula()};
      case 8:
      case 9:
        return AddRow{"lines", row(), {{"size", value()}, own()}};
      case 10:
        return RemoveRow{"lines", row()};
      case 11:
        return MoveRow{"lines", row(), draw(1) == 0 ? "" : row()};
      case 12:
        return Define{"lines.twice", draw(1) == 0 ? "size + own * 3" : "size / own"};
      default:
        return Set{row() + ".size", value()};
    }
  }

  GivenInRow own() {
    if (draw(2) > 0) return {"own", value()};
    return {"own", std::nullopt, "", name() + " + 1"};
  }

  void step() {
    const int kind = draw(9);
    if (kind == 0) {
      undo_and_redo();
    } else {
      std::vector<Change> changes;
      for (int i = draw(2); i >= 0; --i) changes.push_back(change());
      make(changes);
    }
    check();
  }

  void make(const std::vector<Change>& changes) {
    const std::string before = told(*sheet_);
    const std::vector<std::string> ran = sheet_->ran();
    try {
      sheet_->apply(changes);
      ++made_;
    } catch (const Error&) {
      CHECK(told(*sheet_) == before);
      CHECK(sheet_->ran() == ran);
    }
    const std::vector<std::string> log = sheet_->ran();
    CHECK(std::set(log.begin(), log.end()).size() == log.size());
  }

  void undo_and_redo() {
    const std::string now = told(*sheet_);
    const int times = 1 + draw(3);
    int undone = 0;
    while (undone < times && sheet_->undo()) ++undone;
    check();
    for (int i = 0; i < undone; ++i) CHECK(sheet_->redo());
    CHECK(told(*sheet_) == now);
    if (draw(1) == 0) sheet_->undo();
  }

  /// Against the same sheet made anew.
  void check() {
    const auto fresh = empty_sheet();
    fresh->restore(sheet_->changes());
    CHECK(figures_of(*fresh) == figures_of(*sheet_));
  }

  std::mt19937 random_;
  std::unique_ptr<Sheet> sheet_;
  int made_ = 0;
};

}  // namespace

TEST_CASE("sheet/edit: whatever is changed, all figures are those of the sheet made anew") {
  int made = 0;
  for (unsigned seed = 0; seed < 300; ++seed) made += Script(seed).run(60);
  CHECK(made > 4000);  // of 18,000 steps; the others were refused, or undone
}
