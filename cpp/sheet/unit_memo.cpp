#include "sheet/unit_memo.hpp"

#include "exact/error.hpp"
#include "measure/unit_table.hpp"
#include "measure/unit_text.hpp"

namespace scalepan {

namespace {

// Hostile texts must not fill the memory.
constexpr std::size_t most_kept = 256;
constexpr std::size_t longest_kept = 40;

template <typename Memo, typename Make>
auto kept(Memo& memo, std::string_view text, Make make) {
  if (const auto found = memo.find(text); found != memo.end()) return found->second;
  const auto made = make(text);
  if (memo.size() >= most_kept) memo.clear();
  if (text.size() <= longest_kept) memo.emplace(text, made);
  return made;
}

}  // namespace

bool names_unit(std::string_view word) {
  try {
    return find_unit(word, Measures::metric, UnitScope::all) != nullptr;
  } catch (const Error&) {
    return true;  // one of several
  }
}

bool UnitMemo::knows(std::string_view word) { return kept(known_, word, names_unit); }

Unit UnitMemo::read(std::string_view written) {
  return kept(units_, written, [](std::string_view text) { return parse_unit(text); });
}

}  // namespace scalepan
