// Ways from what a line needs to what packs hold.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "costing/plan.hpp"

namespace scalepan {

[[nodiscard]] Form form_of(const Quantity& amount, const std::string& detail);

/// The group of that form; a new one where there is none yet.
OfferGroup& group_of(std::vector<OfferGroup>& groups, const PackContent& content);

/// By the facts of the line's food. It keeps references to what it is made of.
class WayFinder {
 public:
  WayFinder(const Catalog& catalog, const Line& line, bool strict)
      : catalog_(catalog), line_(line), food_(catalog.food(line.food_id)), strict_(strict) {}

  [[nodiscard]] Form needed() const;
  /// Of the line's own amount. Throws `cost.stage` where no share links the stages and `strict`,
  /// and what `conversion` throws or `cost.no_way` where there is no way.
  [[nodiscard]] LineWay find(std::size_t index, const Form& to) const;
  /// Of another amount of the line's food. Throws as above.
  [[nodiscard]] LineWay find(const Form& from, const Form& to) const;

 private:
  [[nodiscard]] std::optional<Conversion> known(const Form& from, const Form& to) const;
  [[nodiscard]] std::optional<Conversion> assumed(Form from, const Form& to) const;
  [[noreturn]] void fail_stages(const Form& from, const Form& to) const;
  [[noreturn]] void fail_no_way(const Form& from, const Form& to) const;

  const Catalog& catalog_;
  const Line& line_;
  const Food* food_;
  bool strict_;
};

}  // namespace scalepan
