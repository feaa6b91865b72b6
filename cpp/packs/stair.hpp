// The stair: which stem is filled up for which need.
#pragma once

#include <algorithm>
#include <cstdint>
#include <vector>

#include "exact/rational.hpp"

namespace scalepan {

/// By residue, that is by the need less whole filler sizes. Needs of a residue above that of one
/// entry and up to that of the next are filled up from the next; those above the last from the
/// empty stem, with one filler more. The empty stem, of residue 0, always stays.
///
/// Entries are searched while they are few; then a small filler size in words gets a slot for
/// every residue.
template <class Number>
class Stair {
 public:
  struct Tread {
    Number excess;  // the price less that of the whole filler sizes in the need
    std::uint32_t stem;
  };

  Stair(const Number& filler_size, const Number& filler_price)
      : filler_size_(filler_size), around_{filler_price, 0} {
    entries_.push_back({Number{}, {Number{}, 0}});
  }

  [[nodiscard]] const Tread& find(const Number& residue) const {
    if constexpr (std::same_as<Number, std::int64_t>) {
      if (!slots_.empty()) return slots_[static_cast<std::size_t>(residue)];
    }
    const auto place = std::ranges::lower_bound(entries_, residue, {}, &Entry::residue);
    return place == entries_.end() ? around_ : place->tread;
  }

  /// Puts a stem in that goes before the one found at its residue. Where the price decides
  /// (`cheaper_wins`) it takes those below it away that have more excess; the empty stem has none.
  /// Returns how many entries were moved or written.
  std::size_t put(const Number& residue, const Tread& tread, bool cheaper_wins) {
    const auto beats = [&](const Tread& other) {
      return cheaper_wins && tread.excess < other.excess;
    };
    if constexpr (std::same_as<Number, std::int64_t>) {
      if (!slots_.empty()) return put_in_slots(static_cast<std::size_t>(residue), tread, beats);
    }
    const auto place = std::ranges::lower_bound(entries_, residue, {}, &Entry::residue);
    const auto end = place != entries_.end() && place->residue == residue ? place + 1 : place;
    auto begin = place;
    while (begin != entries_.begin() && beats(std::prev(begin)->tread)) --begin;
    auto moved = static_cast<std::size_t>(entries_.end() - begin);
    if (begin == end) {
      entries_.insert(begin, {residue, tread});
    } else {
      *begin = {residue, tread};
      entries_.erase(begin + 1, end);
    }
    if constexpr (std::same_as<Number, std::int64_t>) {
      if (entries_.size() > few_entries && filler_size_ <= most_slots) moved += lay_out();
    }
    return moved;
  }

 private:
  static constexpr std::size_t few_entries = 64;
  static constexpr std::int64_t most_slots = 65536;

  struct Entry {
    Number residue;
    Tread tread;
  };

  std::size_t lay_out() {
    for (const Entry& entry : entries_) {
      slots_.resize(static_cast<std::size_t>(entry.residue) + 1, entry.tread);
    }
    slots_.resize(static_cast<std::size_t>(filler_size_), around_);
    entries_.clear();
    return slots_.size();
  }

  template <class Beats>
  std::size_t put_in_slots(std::size_t residue, const Tread& tread, Beats beats) {
    std::uint32_t beaten = slots_[residue].stem;
    std::size_t slot = residue;
    for (; slot > 0; --slot) {
      if (slots_[slot].stem != beaten) {
        if (!beats(slots_[slot])) break;
        beaten = slots_[slot].stem;
      }
      slots_[slot] = tread;
    }
    return residue - slot;
  }

  Number filler_size_;
  Tread around_;  // above the last entry
  std::vector<Tread> slots_;
  std::vector<Entry> entries_;
};

}  // namespace scalepan
