#include "measure/currency.hpp"

#include <algorithm>
#include <array>

namespace scalepan {

namespace {

constexpr std::array currencies = std::to_array<Currency>({
#include "measure/currency_table.inc"
});

static_assert(std::ranges::is_sorted(currencies, {}, &Currency::code));

}  // namespace

std::size_t currency_count() { return currencies.size(); }

const Currency& currency_at(std::size_t index) { return currencies.at(index); }

std::optional<std::size_t> currency_coded(std::string_view code) {
  const auto found = std::ranges::lower_bound(currencies, code, {}, &Currency::code);
  if (found == currencies.end() || found->code != code) return std::nullopt;
  return static_cast<std::size_t>(found - currencies.begin());
}

}  // namespace scalepan
