#include "measure/nearest.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

namespace scalepan {

namespace {

// Longer texts are no misspelt names, and the work grows with the product of the lengths.
constexpr std::size_t longest_name = 60;

std::size_t distance_allowed(std::size_t length) {
  if (length <= 2) return 1;
  return length <= 6 ? 2 : 3;
}

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before(b.size() + 1);
  std::vector<std::size_t> last(b.size() + 1);
  std::vector<std::size_t> now(b.size() + 1);
  std::iota(last.begin(), last.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    now[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      now[j] = std::min({last[j] + 1, now[j - 1] + 1, change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        now[j] = std::min(now[j], before[j - 2] + 1);
      }
    }
    std::swap(before, last);
    std::swap(last, now);
  }
  return last[b.size()];
}

std::vector<std::string> nearest_names(std::string_view name,
                                       std::span<const std::string_view> known, std::size_t most) {
  if (name.size() > longest_name) return {};
  const std::size_t allowed = distance_allowed(name.size());
  std::vector<std::pair<std::size_t, std::string_view>> near;
  for (const std::string_view candidate : known) {
    if (candidate.size() > name.size() + allowed || name.size() > candidate.size() + allowed) {
      continue;
    }
    const std::size_t distance = edit_distance(name, candidate);
    if (distance <= allowed && distance < candidate.size()) near.emplace_back(distance, candidate);
  }
  std::ranges::stable_sort(near, {}, &std::pair<std::size_t, std::string_view>::first);
  std::vector<std::string> names;
  for (const auto& [distance, candidate] : near) {
    if (names.size() == most) break;
    if (std::ranges::find(names, candidate) == names.end()) names.emplace_back(candidate);
  }
  return names;
}

std::string nearest_hint(const std::vector<std::string>& names) {
  if (names.empty()) return {};
  std::string text = "nearest: ";
  for (const std::string& name : names) text += (&name == &names.front() ? "" : ", ") + name;
  return text;
}

}  // namespace scalepan
