#include "sheet/why_tree.hpp"

namespace scalepan {

namespace {

void write(const Why& why, const std::string& lead, const std::string& indent, std::string& text) {
  text += lead + why.name + " = " + why.figure;
  if (!why.how.empty()) text += "\n" + indent + "  = " + why.how;
  if (!why.source.empty()) text += "   [" + why.source + "]";
  text += "\n";
  for (const Why& part : why.parts) {
    const bool last = &part == &why.parts.back();
    write(part, indent + (last ? "└─ " : "├─ "), indent + (last ? "   " : "│  "), text);
  }
}

}  // namespace

std::string text_of(const Why& why) {
  std::string text;
  write(why, "", "", text);
  return text;
}

}  // namespace scalepan
