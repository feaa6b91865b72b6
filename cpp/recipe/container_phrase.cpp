#include "recipe/container_phrase.hpp"

#include <string>

#include "exact/error.hpp"
#include "recipe/food_phrase.hpp"

namespace scalepan {

namespace {

void count_one(MeasurePhrase& phrase) {
  if (phrase.number.vague()) phrase.number.low = phrase.number.high = Rational(1);
}

/// `2 cm`, `1 1/2-inch`, `3 in.`, `1"`.
std::string_view read_length_size(Cursor& cursor, Reading reading) {
  Cursor probe = cursor;
  const std::size_t start = probe.skip_spaces().at();
  std::size_t position = start;
  const auto number = read_amount_number(probe.text(), position, reading.decimal);
  if (!number || number->sign() <= 0) return {};
  probe.move_to(position);
  if (!take_length_unit(probe)) return {};
  cursor = probe;
  return probe.text().substr(start, probe.at() - start);
}

/// `#10`, `No. 2 1/2`: the number its maker calls a can by.
std::string_view read_can_number(Cursor& cursor, Reading reading) {
  Cursor probe = cursor;
  const std::size_t start = probe.skip_spaces().at();
  const bool named = probe.take_sign("#") || probe.take_word("no") || probe.take_word("number");
  if (!named) return {};
  if (probe.rest().starts_with('.')) probe.skip(1);
  std::size_t position = probe.skip_spaces().at();
  if (!read_amount_number(probe.text(), position, reading.decimal)) return {};
  probe.move_to(position);
  cursor = probe;
  return probe.text().substr(start, position - start);
}

/// The container behind the size of a can.
bool take_can(Cursor& cursor, MeasurePhrase& phrase, std::string_view size, Reading reading) {
  const std::size_t at = cursor.skip_spaces().at();
  const auto word = read_unit_word(cursor);
  if (!word || word->kind != UnitKind::container) return false;
  count_one(phrase);
  phrase.count_in(*word, at, reading.measures);
  phrase.size = size;
  return true;
}

/// `(#2 1/2) can`, without the first bracket.
bool read_can_size_in_bracket(Cursor& cursor, MeasurePhrase& phrase, Reading reading) {
  Cursor probe = cursor;
  const std::string_view size = read_can_number(probe, reading);
  if (size.empty() || !probe.take_sign(")")) return false;
  if (!take_can(probe, phrase, size, reading)) return false;
  cursor = probe;
  return true;
}

/// The weight, volume or length of a piece.
bool read_piece_size(Cursor& cursor, SizedPiece& piece, Reading reading) {
  piece.each = read_size(cursor, reading);
  if (!piece.each) piece.length = read_length_size(cursor, reading);
  return piece.each || !piece.length.empty();
}

/// The container or noun that has the size, unless a food the catalogue knows begins with it.
void take_piece_word(Cursor& cursor, SizedPiece& piece, const Catalog& catalog) {
  Cursor behind = cursor;
  piece.word_at = behind.skip_spaces().at();
  const std::string_view rest = behind.rest();
  const auto word = read_unit_word(behind);
  const bool counted = word && (word->kind == UnitKind::container || word->kind == UnitKind::noun);
  if (!counted || knows_food(catalog, trimmed(rest))) return;
  piece.word = word;
  cursor = behind;
}

/// Throws `line.second_measure` for two sizes of one container more than a fifth apart.
void expect_same_size(const WrittenSize& size, const WrittenSize& other, std::size_t at) {
  if (!size.unit || !other.unit || !(size.unit->dimension() == other.unit->dimension())) return;
  const Rational a = size.number * size.unit->ratio();
  const Rational b = other.number * other.unit->ratio();
  if (!lie_apart(a, b)) return;
  fail_at(at, "line.second_measure",
          "two sizes of one container contradict: " + excerpt(size.text) + " and " +
              excerpt(other.text) + " lie more than a fifth apart",
          "write the one that is right");
}

}  // namespace

bool take_length_unit(Cursor& cursor) {
  Cursor probe = cursor;
  for (const std::string_view sign : {"\"", "\u201D", "\u2033"}) {
    if (probe.take_sign(sign)) {
      cursor = probe;
      return true;
    }
  }
  take_hyphen(probe);
  Cursor inches = probe;
  if (inches.take_word("in") && inches.rest().starts_with('.')) {
    inches.skip(1);
    cursor = inches;
    return true;
  }
  const auto word = read_unit_word(probe);
  if (!word || word->kind != UnitKind::length) return false;
  cursor = probe;
  return true;
}

std::optional<WrittenSize> read_size(Cursor& cursor, Reading reading) {
  Cursor probe = cursor;
  const std::size_t start = probe.skip_spaces().at();
  probe.take_word("about");
  std::size_t position = probe.skip_spaces().at();
  const auto number = read_amount_number(probe.text(), position, reading.decimal);
  if (!number || number->sign() <= 0) return std::nullopt;
  probe.move_to(position);
  take_hyphen(probe);
  const auto word = read_unit_word(probe);
  if (!word || word->kind != UnitKind::measure) return std::nullopt;
  WrittenSize size{*number, word->name, resolved_unit(word->name, reading.measures),
                   probe.text().substr(start, probe.at() - start)};
  cursor = probe;
  return size;
}

void take_hyphen(Cursor& cursor) {
  if (cursor.rest().starts_with('-') && letter_length(cursor.text(), cursor.at() + 1) > 0) {
    cursor.skip(1);
  }
}

bool read_can_size(Cursor& cursor, MeasurePhrase& phrase, Reading reading) {
  Cursor probe = cursor;
  const std::string_view size = read_can_number(probe, reading);
  if (size.empty() || !take_can(probe, phrase, size, reading)) return false;
  cursor = probe;
  return true;
}

bool read_lone_size(Cursor& cursor, MeasurePhrase& phrase, Reading reading) {
  Cursor probe = cursor;
  const std::size_t start = probe.skip_spaces().at();
  const auto size = read_unit_word(probe);
  if (!size || size->kind != UnitKind::measure || probe.word().empty()) return false;
  const std::string_view text = probe.text().substr(start, probe.at() - start);
  const auto word = read_unit_word(probe);
  if (!word || word->kind != UnitKind::container) return false;
  count_one(phrase);
  phrase.each =
      WrittenSize{Rational(1), size->name, resolved_unit(size->name, reading.measures), text};
  phrase.count_in(*word, start, reading.measures);
  cursor = probe;
  return true;
}

std::optional<SizedPiece> read_sized_piece(Cursor& cursor, Reading reading,
                                           const Catalog& catalog) {
  SizedPiece piece;
  Cursor probe = cursor;
  if (!read_piece_size(probe, piece, reading)) return std::nullopt;
  take_hyphen(probe);
  take_piece_word(probe, piece, catalog);
  cursor = probe;
  return piece;
}

void count_pieces(MeasurePhrase& phrase, const SizedPiece& piece, Reading reading) {
  if (piece.word) phrase.count_in(*piece.word, piece.word_at, reading.measures);
  if (!piece.word) phrase.unit_at = piece.word_at;
  phrase.each = piece.each;
  if (!piece.length.empty()) phrase.size = piece.length;
}

bool read_bracketed_size(Cursor& cursor, MeasurePhrase& phrase, Reading reading,
                         const Catalog& catalog) {
  Cursor probe = cursor;
  if (!probe.take_sign("(")) return false;
  if (read_can_size_in_bracket(probe, phrase, reading)) {
    cursor = probe;
    return true;
  }
  // About so much may be of one or of all.
  if (same_word(probe.word(), "about") && !(phrase.number.high == Rational(1))) return false;
  SizedPiece piece;
  if (!read_piece_size(probe, piece, reading)) return false;
  while (probe.take_sign("/")) {
    const std::size_t at = probe.skip_spaces().at();
    const auto other = read_size(probe, reading);
    if (!other) return false;
    if (piece.each) expect_same_size(*piece.each, *other, at);
  }
  if (!probe.take_sign(")")) return false;
  take_piece_word(probe, piece, catalog);
  // `3 (450 g)` at the end of a line is of all three, and `3 (450 g) cups` is nothing.
  Cursor unit = probe;
  const bool other_unit =
      !piece.word && read_unit_word(unit) && !knows_food(catalog, trimmed(probe.rest()));
  if (!piece.word && (other_unit || trimmed(probe.rest()).empty())) return false;
  count_pieces(phrase, piece, reading);
  cursor = probe;
  return true;
}

void read_container_size(Cursor& cursor, MeasurePhrase& phrase, Reading reading) {
  if (phrase.each) return;
  Cursor probe = cursor;
  if (!probe.take_sign("(")) return;
  const auto size = read_size(probe, reading);
  if (!size) return;
  probe.take_word("each");
  if (!probe.take_sign(")")) return;
  phrase.each = *size;
  cursor = probe;
}

bool settled_by_bracket(std::string_view text, std::size_t start, Reading reading) {
  Cursor size(text, start);
  const auto first = read_size(size, reading);
  const std::size_t open = text.find('(', start);
  if (!first || open == std::string_view::npos) return false;
  Cursor bracket(text, open + 1);
  const auto second = read_size(bracket, reading);
  return second && second->number == first->number && second->name == first->name &&
         bracket.take_word("each") && bracket.take_sign(")");
}

}  // namespace scalepan
