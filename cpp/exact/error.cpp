#include "exact/error.hpp"

#include <utility>

namespace scalepan {

namespace {

bool continues_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

std::string whole_text(const std::string& message, const std::string& hint, const Place& place) {
  std::string text = place.text();
  if (!text.empty()) text += ": ";
  text += message;
  if (!hint.empty()) text += " (" + hint + ")";
  return text;
}

}  // namespace

std::string Place::text() const {
  if (!cell.empty() && (line > 0 || column == 0)) return cell;
  if (!cell.empty()) return cell + ":" + std::to_string(column);
  std::string text = file;
  if (line > 0) text += (text.empty() ? "line " : ":") + std::to_string(line);
  if (line > 0 && column > 0) text += ":" + std::to_string(column);
  return text;
}

Error::Error(std::string_view code, std::string message, std::string hint, Place place)
    : code_(code),
      message_(std::move(message)),
      hint_(std::move(hint)),
      place_(std::move(place)),
      what_(whole_text(message_, hint_, place_)) {}

Error Error::at(Place place) const { return {code_, message_, hint_, std::move(place)}; }

void fail(std::string_view code, std::string message, std::string hint, Place place) {
  throw Error(code, std::move(message), std::move(hint), std::move(place));
}

void fail_at(std::size_t offset, std::string_view code, std::string message, std::string hint) {
  Place place;
  place.offset = offset;
  throw Error(code, std::move(message), std::move(hint), std::move(place));
}

Place place_within(const Place& start, std::string_view text, const Error& error) {
  Place place = start;
  const std::size_t offset = error.place().offset;
  if (offset == Place::no_offset || place.column == 0) return place;
  for (const char c : text.substr(0, offset)) {
    if (!continues_character(c)) ++place.column;
  }
  return place;
}

std::string excerpt(std::string_view text, std::size_t most) {
  std::size_t cut = text.size();
  if (cut > most) {
    cut = most;
    while (cut > 0 && continues_character(text[cut])) --cut;
  }
  std::string shown(text.substr(0, cut));
  for (char& c : shown) {
    if (static_cast<unsigned char>(c) < 0x20U || c == 0x7F) c = '?';
  }
  return cut < text.size() ? shown + "..." : shown;
}

}  // namespace scalepan
