// How a figure of a sheet comes about.
#include <set>
#include <string>
#include <vector>

#include "sheet/sheet.hpp"

namespace scalepan {

namespace {

constexpr std::size_t most_lines = 2000;

std::string text_of(const CellValue& value) {
  const auto* quantity = std::get_if<Quantity>(&value);
  if (quantity == nullptr) return std::get<bool>(value) ? "yes" : "no";
  return quantity->text();
}

}  // namespace

/// Depth first, without recursion; a cell that was told before is not told again in full.
class Sheet::Teller {
 public:
  explicit Teller(const Sheet& sheet) : sheet_(sheet) {}

  std::string tell(Cell cell) {
    open_.push_back({cell, "", ""});
    for (std::size_t lines = 0; !open_.empty(); ++lines) {
      const Open next = open_.back();
      open_.pop_back();
      if (lines == most_lines) return text_ + next.lead + "...\n";
      write(next);
    }
    return text_;
  }

 private:
  struct Open {
    Cell cell;
    std::string lead;
    std::string indent;
  };

  void write(const Open& open) {
    const Content& content = sheet_.contents_[open.cell];
    text_ += open.lead + sheet_.names_.name(open.cell) + " = " + figure(open.cell) + "\n";
    if (content.instead) {
      text_ += open.indent + "  overridden: " + content.instead->why + by(*content.instead) + "\n";
    }
    if (!content.formula) return;
    const bool fresh = told_.insert(open.cell).second;
    text_ += open.indent + "  = " + content.text + (fresh ? "\n" : "   (as above)\n");
    if (fresh) queue_inputs(open);
  }

  void queue_inputs(const Open& open) {
    const std::vector<Cell>& inputs = sheet_.uses_.read_by(open.cell);
    for (std::size_t i = inputs.size(); i-- > 0;) {
      const bool last = i + 1 == inputs.size();
      open_.push_back({inputs[i], open.indent + (last ? "\u2514\u2500 " : "\u251C\u2500 "),
                       open.indent + (last ? "   " : "\u2502  ")});
    }
  }

  [[nodiscard]] std::string figure(Cell cell) const {
    if (sheet_.failed_[cell] != 0) return std::string("failed: ") + sheet_.held_.at(cell).error.what();
    return text_of(sheet_.told(cell, sheet_.values_[cell]));
  }

  static std::string by(const Override& instead) {
    std::string text;
    if (!instead.who.empty()) text += ", " + instead.who;
    if (!instead.when.empty()) text += ", " + instead.when;
    return text;
  }

  const Sheet& sheet_;
  std::vector<Open> open_;
  std::set<Cell> told_;
  std::string text_;
};

std::string Sheet::why(std::string_view name) const { return Teller(*this).tell(known(name)); }

}  // namespace scalepan
