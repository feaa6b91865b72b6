// Units read before: formulas name the same few again and again.
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "measure/unit.hpp"

namespace scalepan {

/// Any unit, whatever measures it needs.
[[nodiscard]] bool names_unit(std::string_view word);

class UnitMemo {
 public:
  /// As `names_unit`.
  [[nodiscard]] bool knows(std::string_view word);
  /// As `parse_unit`, and throws the same.
  [[nodiscard]] Unit read(std::string_view written);

 private:
  struct Hash {
    using is_transparent = void;
    std::size_t operator()(std::string_view text) const noexcept {
      return std::hash<std::string_view>{}(text);
    }
  };
  template <typename Kept>
  using Memo = std::unordered_map<std::string, Kept, Hash, std::equal_to<>>;

  Memo<bool> known_;
  Memo<Unit> units_;
};

}  // namespace scalepan
