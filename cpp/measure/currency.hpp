// ISO 4217 currencies, list one of 2024-06-25.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace scalepan {

struct Currency {
  std::string_view code;
  int minor_digits;  // -1 where the standard names none
  std::string_view name;
};

/// The code that ISO 4217 keeps for amounts in no currency; held by prices that name none.
inline constexpr std::string_view no_currency = "XXX";

[[nodiscard]] std::size_t currency_count();
[[nodiscard]] const Currency& currency_at(std::size_t index);
/// Its place in the table, by its three capital letters.
[[nodiscard]] std::optional<std::size_t> currency_coded(std::string_view code);

}  // namespace scalepan
