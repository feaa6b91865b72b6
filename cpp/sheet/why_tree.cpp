#include "sheet/why_tree.hpp"

#include <string_view>

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

std::string escaped(std::string_view text) {
  std::string safe;
  for (const char c : text) {
    switch (c) {
      case '&':
        safe += "&amp;";
        break;
      case '<':
        safe += "&lt;";
        break;
      case '>':
        safe += "&gt;";
        break;
      case '"':
        safe += "&quot;";
        break;
      default:
        safe += c;
    }
  }
  return safe;
}

std::string head_in_html(const Why& why) {
  std::string html = "<b>" + escaped(why.name) + "</b> = " + escaped(why.figure);
  if (!why.how.empty()) html += " <code>= " + escaped(why.how) + "</code>";
  if (!why.source.empty()) html += " <small>[" + escaped(why.source) + "]</small>";
  return html;
}

void write_html(const Why& why, std::string& html) {
  if (why.parts.empty()) {
    html += head_in_html(why);
    return;
  }
  html += "<details open><summary>" + head_in_html(why) + "</summary><ul>";
  for (const Why& part : why.parts) {
    html += "<li>";
    write_html(part, html);
    html += "</li>";
  }
  html += "</ul></details>";
}

}  // namespace

std::string html_of(const Why& why) {
  std::string html = "<div class=\"scalepan-why\">";
  write_html(why, html);
  return html + "</div>";
}

std::string text_of(const Why& why) {
  std::string text;
  write(why, "", "", text);
  return text;
}

}  // namespace scalepan
