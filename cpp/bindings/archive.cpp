#include "bindings/archive.hpp"

#include <algorithm>
#include <cstring>

#include "measure/unit_text.hpp"

namespace scalepan::bindings {

namespace {

constexpr std::size_t checksum_size = 8;

/// FNV-1a of 64 bits: it tells what was changed by accident.
std::uint64_t sum_of(std::string_view bytes) {
  std::uint64_t sum = 0xcbf29ce484222325U;
  for (const char byte : bytes) {
    sum = (sum ^ static_cast<unsigned char>(byte)) * 0x100000001b3U;
  }
  return sum;
}

std::string checksum_of(std::string_view body) {
  const std::uint64_t sum = sum_of(body);
  std::string text;
  for (std::size_t i = 0; i < checksum_size; ++i) {
    text += static_cast<char>(sum >> (8 * i) & 0xffU);
  }
  return text;
}

/// A whole number, not below zero.
void pass_parts(Archive& archive, Rational& value) {
  const Rational base(std::int64_t{1} << 62U);
  std::vector<Rational> parts;
  for (Rational rest = value; !archive.reads() && !rest.is_zero();) {
    Rational above = floor(rest / base);
    parts.push_back(rest - above * base);
    rest = std::move(above);
  }
  pass(archive, parts);
  if (!archive.reads()) return;
  value = Rational();
  for (std::size_t i = parts.size(); i > 0; --i) value = value * base + parts[i - 1];
}

void pass_big(Archive& archive, Rational& value) {
  bool negative = value.sign() < 0;
  Rational above = abs(numerator(value));
  Rational below = denominator(value);
  pass(archive, negative);
  pass_parts(archive, above);
  pass_parts(archive, below);
  if (below.is_zero()) fail_damaged();
  if (archive.reads()) value = (negative ? -above : above) / below;
}

}  // namespace

void fail_damaged() {
  fail("pickle.damaged", "the pickle is damaged: bytes of it are missing or changed",
       "make it anew from the object");
}

std::string digits_of(std::string_view bytes) {
  constexpr std::string_view digits = "0123456789abcdef";
  std::string text;
  for (std::uint64_t sum = sum_of(bytes); text.size() < digits.size(); sum >>= 4U) {
    text += digits[sum & 0xfU];
  }
  return text;
}

std::string sealed(std::string_view edition, std::string_view body) {
  std::string bytes(1, static_cast<char>(edition.size()));
  return bytes.append(edition).append(checksum_of(body)).append(body);
}

std::string_view opened(std::string_view edition, std::string_view bytes) {
  const std::size_t size = bytes.empty() ? 0 : static_cast<unsigned char>(bytes.front());
  if (size == 0 || bytes.size() < 1 + size + checksum_size) fail_damaged();
  const std::string_view made_by = bytes.substr(1, size);
  if (made_by != edition) {
    const auto is_plain = [](char c) { return c > ' ' && c <= '~'; };
    if (!std::ranges::all_of(made_by, is_plain)) fail_damaged();
    fail("pickle.version",
         "the pickle was made by scalepan " + excerpt(made_by) + ", and this is scalepan " +
             std::string(edition),
         "keep costings and sheets in files, which later versions read");
  }
  const std::string_view body = bytes.substr(1 + size + checksum_size);
  if (checksum_of(body) != bytes.substr(1 + size, checksum_size)) fail_damaged();
  return body;
}

Archive::Level::Level(Archive& archive) : depth_(archive.depth_) {
  if (depth_ >= deepest) fail_damaged();
  ++depth_;
}

void Archive::bytes(void* data, std::size_t size) {
  if (!reads()) {
    written_.append(static_cast<const char*>(data), size);
    return;
  }
  if (size > left_.size()) fail_damaged();
  if (size > 0) std::memcpy(data, left_.data(), size);
  left_.remove_prefix(size);
}

void Archive::whole(std::int64_t& value) {
  constexpr unsigned more = 0x80;
  constexpr unsigned most_shift = 63;
  std::uint64_t bits =
      (static_cast<std::uint64_t>(value) << 1U) ^ static_cast<std::uint64_t>(value < 0 ? -1 : 0);
  if (!reads()) {
    for (; bits >= more; bits >>= 7U) written_ += static_cast<char>((bits & 0x7fU) | more);
    written_ += static_cast<char>(bits);
    return;
  }
  bits = 0;
  for (unsigned shift = 0;; shift += 7) {
    if (shift > most_shift || left_.empty()) fail_damaged();
    const auto byte = static_cast<unsigned char>(left_.front());
    left_.remove_prefix(1);
    bits |= static_cast<std::uint64_t>(byte & 0x7fU) << shift;
    if (byte < more) break;
  }
  value = static_cast<std::int64_t>((bits >> 1U) ^ (0 - (bits & 1U)));
}

std::size_t Archive::length(std::size_t value, std::size_t least_bytes) {
  auto length = static_cast<std::int64_t>(value);
  whole(length);
  const std::size_t most = left_.size() / least_bytes;
  if (reads() && (length < 0 || static_cast<std::size_t>(length) > most)) fail_damaged();
  return static_cast<std::size_t>(length);
}

void Archive::text(std::string& value) {
  if (!reads()) {
    const auto [known, fresh] =
        places_.try_emplace(value, static_cast<std::int64_t>(places_.size()));
    std::int64_t told = fresh ? static_cast<std::int64_t>(value.size()) : -1 - known->second;
    whole(told);
    if (fresh) written_ += value;
    return;
  }
  std::int64_t told = 0;
  whole(told);
  if (told < 0) {
    const auto place = static_cast<std::size_t>(-1 - told);
    if (place >= texts_.size()) fail_damaged();
    value = texts_[place];
    return;
  }
  const auto size = static_cast<std::size_t>(told);
  if (size > left_.size()) fail_damaged();
  texts_.push_back(left_.substr(0, size));
  left_.remove_prefix(size);
  value = texts_.back();
}

void Archive::unit(Unit& value) {
  std::string symbol;
  if (!reads()) symbol = value.symbol();
  text(symbol);
  if (!reads()) return;
  auto known = units_.find(symbol);
  if (known == units_.end()) {
    const Unit read = symbol.empty() ? Unit() : parse_unit(symbol);
    known = units_.emplace(symbol, read).first;
  }
  value = known->second;
}

void Archive::expect_end() const {
  if (!left_.empty()) fail_damaged();
}

void pass(Archive& archive, bool& value) {
  std::int64_t whole = value ? 1 : 0;
  archive.whole(whole);
  value = whole != 0;
}

void pass(Archive& archive, std::string& value) { archive.text(value); }

void pass(Archive& archive, Unit& value) { archive.unit(value); }

void pass(Archive& archive, Rational& value) {
  std::int64_t below = value.is_word() ? value.word_denominator() : 0;
  archive.whole(below);
  if (below == 0) return pass_big(archive, value);
  if (below < 0) fail_damaged();
  std::int64_t above = value.is_word() ? value.word_numerator() : 0;
  archive.whole(above);
  if (archive.reads()) value = Rational(above, below);
}

void pass(Archive& archive, Quantity& value) {
  Rational number = value.coherent();
  pass(archive, number);
  if (archive.compares()) {
    std::string symbol = value.dimension().coherent_symbol();
    return archive.text(symbol);
  }
  Unit shown = value.unit();
  archive.unit(shown);
  if (archive.reads()) value = Quantity::of_coherent(std::move(number), shown);
}

void pass(Archive& archive, Place& value) {
  if (archive.compares()) return;
  pass(archive, value.file);
  pass(archive, value.line);
  pass(archive, value.column);
  pass(archive, value.cell);
  pass(archive, value.offset);
}

}  // namespace scalepan::bindings
