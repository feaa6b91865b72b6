// Packs at their price, without any terms.
#pragma once

#include <span>
#include <vector>

#include "packs/purchase.hpp"

namespace scalepan {

struct Pack {
  Rational size;
  Rational price;
};

/// Each pack as a purchase of its own row.
inline std::vector<Purchase> purchases_of(std::span<const Pack> packs) {
  std::vector<Purchase> purchases;
  for (const Pack& pack : packs) {
    purchases.push_back({pack.size, pack.price, purchases.size()});
  }
  return purchases;
}

}  // namespace scalepan
