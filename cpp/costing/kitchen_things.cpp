#include "costing/kitchen_things.hpp"

#include <algorithm>
#include <iterator>
#include <tuple>
#include <utility>

#include "costing/why_parts.hpp"
#include "exact/error.hpp"
#include "measure/figure.hpp"

namespace scalepan {

namespace {

bool same_fact(const Fact* a, const Fact* b) {
  return a == b || (a->id == b->id && a->kind == b->kind && a->value == b->value &&
                    a->source == b->source && a->layer == b->layer);
}

auto told_of(const Offer& offer) {
  return std::tie(offer.item, offer.pack.text, offer.shop, offer.date, offer.keeping);
}

bool same_place(const Place& a, const Place& b) {
  return a.file == b.file && a.line == b.line && a.column == b.column;
}

bool same_offer(const Offer* a, const Offer* b) {
  return a == b || (told_of(*a) == told_of(*b) && a->price == b->price &&
                    a->deposit == b->deposit && same_place(a->place, b->place));
}

bool same_purchase(const WayToBuy& a, const WayToBuy& b) {
  const auto told = [](const WayToBuy& way) {
    const Purchase& p = way.purchase;
    return std::tie(p.size, p.price, p.row, p.packs, p.least, p.limit, p.one_of, way.text);
  };
  return told(a) == told(b);
}

bool same_on_hand(const OnHand& a, const OnHand& b) {
  return a.amount == b.amount && a.value == b.value && a.stock->use_by == b.stock->use_by &&
         a.stock->amount.text == b.stock->amount.text;
}

bool same_group(const OfferGroup& a, const OfferGroup& b) {
  return a.form == b.form && a.unit == b.unit &&
         std::ranges::equal(a.offers, b.offers, same_offer) &&
         std::ranges::equal(a.ways_to_buy, b.ways_to_buy, same_purchase) &&
         std::ranges::equal(a.on_hand, b.on_hand, same_on_hand);
}

}  // namespace

FoodThing::FoodThing(std::string name, std::shared_ptr<const Catalog> catalog,
                     std::vector<const Fact*> facts)
    : name_(std::move(name)), catalog_(std::move(catalog)), facts_(std::move(facts)) {}

bool FoodThing::same_as(const Thing& other) const {
  const auto* food = dynamic_cast<const FoodThing*>(&other);
  return food != nullptr && food->name_ == name_ &&
         std::ranges::equal(food->facts_, facts_, same_fact);
}

const Fact& FoodThing::fact(FactKind kind, Stage to, std::string_view detail) const {
  for (const Fact* fact : facts_) {
    const bool same_stage = kind != FactKind::piece || fact->to == to;
    const bool meant = detail.empty() || fact->state == detail || fact->size == detail;
    if (fact->kind == kind && same_stage && meant) return *fact;
  }
  fail("convert.no_fact",
       "no " + std::string(name_of(kind)) + " of " + name_ + " is among its facts");
}

bool RecipeThing::same_as(const Thing& other) const {
  const auto* recipe = dynamic_cast<const RecipeThing*>(&other);
  return recipe != nullptr && recipe->recipe_ == recipe_;
}

std::shared_ptr<const Recipe> RecipeThing::at(const Rational& portions) const {
  if (portions == recipe_->portions()) return recipe_;
  const std::lock_guard lock(mutex_);
  if (last_ == nullptr || !(last_->portions() == portions)) {
    last_ = std::make_shared<const Recipe>(recipe_->scaled(portions));
  }
  return last_;
}

OffersThing::OffersThing(std::shared_ptr<const Plan> plan, std::size_t item, std::size_t group)
    : plan_(std::move(plan)), item_(item), group_(group) {}

const OfferGroup* OffersThing::group() const {
  return group_ == no_group ? nullptr : &item().groups[group_];
}

std::string OffersThing::text() const {
  const OfferGroup* offered = group();
  if (offered == nullptr) return "none";
  std::string packs;
  for (const Offer* offer : offered->offers) {
    packs += (packs.empty() ? "" : ", ") + offer->pack.text;
  }
  if (offered->on_hand.empty()) return packs;
  return packs.empty() ? "on hand only" : packs + ", and some on hand";
}

bool OffersThing::same_as(const Thing& other) const {
  const auto* offers = dynamic_cast<const OffersThing*>(&other);
  if (offers == nullptr || !(offers->plan_->money() == plan_->money())) return false;
  if (offers->plan_ == plan_) return offers->item_ == item_ && offers->group_ == group_;
  const OfferGroup* mine = group();
  const OfferGroup* theirs = offers->group();
  if (mine == nullptr || theirs == nullptr) {
    return mine == theirs && item().problem == offers->item().problem;
  }
  return group_ == offers->group_ && item().item == offers->item().item &&
         plan_->taxes() == offers->plan_->taxes() && same_group(*mine, *theirs);
}

std::vector<Why> OffersThing::parts() const {
  std::vector<Why> parts;
  if (const OfferGroup* offered = group()) {
    for (const Offer* offer : offered->offers) {
      parts.push_back(why_pack_price(*offer, plan_->taxes()));
    }
  }
  return parts;
}

PacksThing::PacksThing(std::shared_ptr<const Plan> plan, ItemCost bought, std::size_t kind)
    : plan_(std::move(plan)), bought_(std::move(bought)), kind_(kind) {}

std::string PacksThing::text() const {
  const PacksTaken taken = bought_.packs();
  return taken.empty() ? "none" : text_of(taken);
}

bool PacksThing::same_as(const Thing& other) const {
  const auto* packs = dynamic_cast<const PacksThing*>(&other);
  if (packs == nullptr || packs->kind_ != kind_) return false;
  const ItemCost& a = bought_;
  const ItemCost& b = packs->bought_;
  return a.need == b.need && a.cover.counts == b.cover.counts && a.cover.bought == b.cover.bought &&
         a.cover.price == b.cover.price && (a.group == b.group || same_group(*a.group, *b.group));
}

std::size_t PacksThing::place_of_amount(std::size_t arguments) const {
  if (kind_ + 1 < arguments) return kind_ + 1;
  fail("cost.kind", "no amount is given for the packs that are bought: " + text());
}

std::vector<Why> PacksThing::parts() const {
  std::vector<Why> parts;
  if (!bought_.cover.total.is_zero()) {
    const Quantity held = Quantity::of_coherent(bought_.cover.total, bought_.need.unit());
    parts.push_back({"bought", figure_of(held), "what the packs hold", "", {}});
  }
  std::ranges::move(why_terms(bought_, money()), std::back_inserter(parts));
  if (!bought_.stock.empty()) parts.push_back(why_on_hand(bought_, money()));
  return parts;
}

}  // namespace scalepan
