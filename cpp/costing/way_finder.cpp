#include "costing/way_finder.hpp"

#include <algorithm>
#include <utility>

#include "exact/error.hpp"
#include "measure/count_nouns.hpp"

namespace scalepan {

namespace {

/// Counts meet as they are where they count one thing: cloves and cloves, or the item itself in
/// whatever size the recipe names, since the shop sells it as it comes.
bool counts_alike(const Line& line, const Form& from, const Form& to) {
  if (from.kind != Kind::count || to.kind != Kind::count || from.stage != to.stage) return false;
  const std::string& noun = line.counted_noun();
  return to.detail.empty() ? noun.empty() : same_noun(noun, to.detail);
}

std::string counted(const Form& form) {
  return "the " + (form.detail.empty() ? "piece" : form.detail);
}

}  // namespace

Form form_of(const Quantity& amount, const std::string& detail) {
  return {kind_of(amount.dimension().without_stages()), amount.stage(), detail};
}

OfferGroup& group_of(std::vector<OfferGroup>& groups, const PackContent& content) {
  const Form form = form_of(content.amount, content.noun);
  const auto known = std::ranges::find(groups, form, &OfferGroup::form);
  if (known != groups.end()) return *known;
  OfferGroup& group = groups.emplace_back();
  group.form = form;
  group.unit = content.amount.unit();
  return group;
}

Form WayFinder::needed() const { return form_of(line_.written, line_.detail()); }

LineWay WayFinder::find(std::size_t index, const Form& to) const {
  const Form from = needed();
  LineWay way;
  if (!counts_alike(line_, from, to)) way = find(from, to);
  way.line = index;
  return way;
}

LineWay WayFinder::find(const Form& from, const Form& to) const {
  LineWay way;
  if (from == to) return way;
  if (auto how = known(from, to)) {
    way.conversion = std::move(*how);
    return way;
  }
  if (auto how = assumed(from, to)) {
    if (strict_) fail_stages(from, to);
    way.conversion = std::move(*how);
    way.share_assumed = true;
    return way;
  }
  fail_no_way(from, to);
}

std::optional<Conversion> WayFinder::known(const Form& from, const Form& to) const {
  if (food_ != nullptr) {
    return find_conversion(catalog_, *food_, from, to, line_.preparations);
  }
  const bool same = from.kind == to.kind && from.stage == to.stage;
  return same && from.kind != Kind::count ? std::optional(Conversion{}) : std::nullopt;
}

/// Between AP and EP only: a drained or cooked weight is never near the whole.
std::optional<Conversion> WayFinder::assumed(Form from, const Form& to) const {
  const auto raw = [](Stage stage) {
    return stage == Stage::as_purchased || stage == Stage::edible;
  };
  if (from.stage == to.stage || !raw(from.stage) || !raw(to.stage)) return std::nullopt;
  from.stage = to.stage;
  if (auto how = known(from, to)) return how;
  return std::nullopt;
}

void WayFinder::fail_stages(const Form& from, const Form& to) const {
  fail("cost.stage",
       line_.food + " is needed at " + std::string(symbol_of(from.stage)) + " (" +
           std::string(name_of(from.stage)) + ") but sold at " + std::string(symbol_of(to.stage)) +
           " (" + std::string(name_of(to.stage)) + "), and no edible share links the two",
       "add the share as a fact of your own", line_.place);
}

void WayFinder::fail_no_way(const Form& from, const Form& to) const {
  if (from.kind == Kind::count && to.kind == Kind::count) {
    fail("cost.no_way",
         line_.food + " is counted by " + counted(from) + " but sold by " + counted(to) +
             ", and no weights of both link the two",
         "price it as it is needed, or add a piece weight of each as facts of your own");
  }
  if (food_ != nullptr) {
    static_cast<void>(conversion(catalog_, *food_, from, to, line_.preparations));
  }
  fail("cost.no_way",
       line_.food + " is needed by " + std::string(name_of(from.kind)) + " " +
           std::string(symbol_of(from.stage)) + " but sold by " + std::string(name_of(to.kind)) +
           " " + std::string(symbol_of(to.stage)) + ", and nothing is known of this food",
       "use a name the catalogue has, or price it as it is needed");
}

}  // namespace scalepan
