// opening stock + till = used + thrown + closing stock, exactly, on random costings. There is no
// opening stock here. Pinned seed.
#include <array>
#include <random>

#include "costing/pot.hpp"
#include "exact/number_text.hpp"

namespace scalepan {
namespace {

class RandomKitchen {
 public:
  std::size_t below(std::size_t end) {
    return std::uniform_int_distribution<std::size_t>(0, end - 1)(random_);
  }
  std::string number(std::size_t most) { return std::to_string(1 + below(most)); }

  std::vector<std::string> lines() {
    std::vector<std::string> all;
    for (const char* ending :
         {" g leeks, trimmed", " g pearl barley", " eggs | whole", " g onions, chopped",
          " g chickpeas, drained", " g apples, peeled"}) {
      if (below(4) > 0)
        all.push_back(mixed_text(Rational(1 + below(900)) / Rational(1 + below(7))) + ending);
    }
    if (all.empty()) all.push_back("500 g leeks");
    return all;
  }

  std::vector<Shelf> shelves() {
    std::vector<Shelf> all;
    constexpr std::array<const char*, 3> keeps{"yes", "no", "3 days"};
    for (const char* item : {"leeks", "pearl barley", "onions", "apples"}) {
      for (std::size_t packs = below(4); packs > 0; --packs) {
        add(all,
            {item, "AP", number(2000) + " g", number(5) + "." + number(89), keeps.at(below(3))});
      }
    }
    add(all, {"eggs", "AP", number(12), "1.50", keeps.at(below(3))});
    add(all, {"chickpeas", "AP", "400 g tin (240 g drained)", "0." + number(9), "no"});
    return all;
  }

  Rational portions() { return Rational(1 + below(4000)) / Rational(1 + below(2) * 6); }

 private:
  /// No pack of an item twice, which a price book refuses.
  static void add(std::vector<Shelf>& all, Shelf shelf) {
    for (const Shelf& known : all) {
      if (known.item == shelf.item && known.pack == shelf.pack) return;
    }
    all.push_back(std::move(shelf));
  }

  std::mt19937_64 random_{20240625};
};

Rational balance(const Costs& costs) {
  return costs.till - costs.used - costs.thrown - costs.closing;
}

void check_item(const ItemCost& item) {
  if (item.group == nullptr) {
    CHECK(item.costs.till.is_zero());
    return;
  }
  CHECK(balance(item.costs).is_zero());
  CHECK(item.leftover.coherent() == item.cover.total - item.need.coherent());
  CHECK(item.leftover.coherent().sign() >= 0);
  CHECK((item.keeping.keeps ? item.costs.thrown : item.costs.closing).is_zero());
  Costs sum;
  Rational need;
  for (const LineCost& line : item.lines) {
    CHECK(balance(line.costs).is_zero());
    sum += line.costs;
    need += line.bought_as.coherent();
  }
  CHECK(need == item.need.coherent());
  CHECK(sum.till == item.costs.till);
  CHECK(sum.used == item.costs.used);
  CHECK(sum.thrown == item.costs.thrown);
}

TEST_CASE("costs balance on random costings, in all, by item and by line") {
  RandomKitchen kitchen;
  int priced = 0;
  for (int i = 0; i < 300; ++i) {
    const Costing costing(recipe_of(kitchen.lines()).scaled(kitchen.portions()),
                          prices_of(kitchen.shelves()));
    CHECK(balance(costing.costs()).is_zero());
    Rational till;
    for (const ItemCost& item : costing.items()) {
      check_item(item);
      till += item.costs.till;
      if (item.group != nullptr) ++priced;
    }
    CHECK(costing.cost("till").value() == till);
    CHECK(costing.cost("borne") == costing.cost("used") + costing.cost("thrown"));
    CHECK(costing.per_portion("borne") * Quantity(costing.recipe().portions(), u("portion")) ==
          costing.cost("borne"));
  }
  CHECK(priced > 600);
}

}  // namespace
}  // namespace scalepan
