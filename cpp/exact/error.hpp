// The one error type of the core: a stable code, what is wrong, where, and the nearest fix.
#pragma once

#include <cstddef>
#include <exception>
#include <string>
#include <string_view>

namespace scalepan {

/// Where an error stands. Line and column count from 1; 0 means unknown.
/// `offset` is the byte offset inside the text that was being read, until a
/// caller that knows the file turns it into a line and a column.
struct Place {
  static constexpr std::size_t no_offset = static_cast<std::size_t>(-1);

  std::string file;
  int line = 0;
  int column = 0;
  std::string cell;
  std::size_t offset = no_offset;

  /// `pot.toml:4:10`, `leeks.buy`, `leeks.buy:15` for a place in its formula, or empty.
  [[nodiscard]] std::string text() const;
};

/// A text read from a file, and where it begins.
struct PlacedText {
  std::string text;
  Place place;
};

class Error : public std::exception {
 public:
  /// `code` is stable and dotted (`unit.unknown`); its first word names the subject.
  Error(std::string_view code, std::string message, std::string hint = {}, Place place = {});

  [[nodiscard]] const std::string& code() const noexcept { return code_; }
  [[nodiscard]] const std::string& message() const noexcept { return message_; }
  [[nodiscard]] const std::string& hint() const noexcept { return hint_; }
  [[nodiscard]] const Place& place() const noexcept { return place_; }

  /// `place: message (hint)` in one line.
  [[nodiscard]] const char* what() const noexcept override { return what_.c_str(); }

  /// The same error at another place.
  [[nodiscard]] Error at(Place place) const;

 private:
  std::string code_;
  std::string message_;
  std::string hint_;
  Place place_;
  std::string what_;
};

/// Throws from one place, so that hot callers stay small.
[[noreturn]] void fail(std::string_view code, std::string message, std::string hint = {},
                       Place place = {});

/// Throws with the byte offset of the culprit inside the text being read.
[[noreturn]] void fail_at(std::size_t offset, std::string_view code, std::string message,
                          std::string hint = {});

/// `start`, moved to the offset that `error` carries inside `text`, which begins at `start`.
/// Columns count characters, not bytes.
[[nodiscard]] Place place_within(const Place& start, std::string_view text, const Error& error);

/// Runs `read` on a text that begins at `start`: an error that knows its offset only, or nothing,
/// leaves with its full place.
template <typename Read>
auto located(const Place& start, std::string_view text, Read read) {
  try {
    return read();
  } catch (const Error& error) {
    if (!error.place().text().empty()) throw;
    throw error.at(place_within(start, text, error));
  }
}

/// Runs `read`: an error that knows neither place nor offset leaves with this offset.
template <typename Read>
auto at_offset(std::size_t offset, Read read) {
  try {
    return read();
  } catch (const Error& error) {
    if (error.place().offset != Place::no_offset || !error.place().text().empty()) throw;
    Place place;
    place.offset = offset;
    throw error.at(place);
  }
}

/// Runs `read` on a part of a text, which begins at `offset` in it: what it throws without a full
/// place leaves with its offset in the whole.
template <typename Read>
auto in_part(std::size_t offset, Read read) {
  try {
    return read();
  } catch (const Error& error) {
    if (!error.place().text().empty()) throw;
    Place place;
    const bool known = error.place().offset != Place::no_offset;
    place.offset = offset + (known ? error.place().offset : 0);
    throw error.at(place);
  }
}

/// The text, cut to a length fit for a message, with control characters replaced.
[[nodiscard]] std::string excerpt(std::string_view text, std::size_t most = 40);

}  // namespace scalepan
