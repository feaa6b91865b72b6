// Ids of lines as names of cells.
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>

namespace scalepan {

/// Small letters, digits and `_`: accents go, and what means something else in formulas gets a `_`
/// behind it. Each id has a name of its own.
class CellIds {
 public:
  /// Names that no line may have.
  explicit CellIds(std::set<std::string, std::less<>> taken) : taken_(std::move(taken)) {}

  const std::string& name(const std::string& id);
  [[nodiscard]] const std::map<std::string, std::string, std::less<>>& all() const {
    return names_;
  }

 private:
  std::map<std::string, std::string, std::less<>> names_;
  std::set<std::string, std::less<>> taken_;
};

}  // namespace scalepan
