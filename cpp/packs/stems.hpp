// Stems: the best covers that hold no filler.
//
// The filler is the thing of the best price a size, of equals the one of fewest packs a size, then
// of the earlier row. Every best cover is a stem filled up with fillers: take the fillers away,
// and the rest is a best cover of what is left of the need. Of any filler.size things (in common
// steps) other than the filler some hold a whole number of filler sizes, and fillers in their
// place go before them. So a stem has fewer things than that, and there are finitely many stems:
// usually a few hundred, even where the covers themselves repeat only after millions of steps.
//
// Stems come in ascending order of their keys, each as an earlier stem and one thing more, the
// thing of the earliest row in it. A candidate is a stem if it goes before every earlier stem
// filled up to its total. What refuses a candidate once refuses it for ever, and a thing that is
// no stem alone is in none: whatever covers its size better can take its place.
//
// Ties are decided here: among best covers of equal key the one with more of an earlier row is
// the one whose earliest row is earliest, and the same then holds for the rest of it.
#pragma once

#include <cstdint>
#include <limits>
#include <memory>
#include <optional>
#include <vector>

#include "packs/cover_key.hpp"
#include "packs/stair.hpp"

namespace scalepan {

/// A stem and how many fillers.
template <class Number>
struct FilledStem {
  std::size_t stem = 0;
  Number fillers{};
};

template <class Number>
class Stems {
 public:
  using Key = CoverKey<Number>;

  /// `things` as listed in `all`; at least one, none of them limited.
  Stems(std::shared_ptr<const std::vector<PackThing<Number>>> all, std::vector<ThingIndex> things,
        CoverOrder order, std::shared_ptr<CoverWork> work);

  /// Finds one more; false once there are no more. Throws `cover.too_many`.
  bool grow();
  [[nodiscard]] bool complete() const { return complete_; }

  /// The first is the empty cover.
  [[nodiscard]] std::size_t size() const { return stems_.size(); }
  [[nodiscard]] const Key& key(std::size_t stem) const { return stems_[stem].key; }
  [[nodiscard]] const Number& largest_total() const { return total_of(stems_.back().key); }
  [[nodiscard]] ThingIndex filler() const { return filler_; }
  [[nodiscard]] const Key& filler_key() const { return (*all_)[filler_].key; }

  /// The best cover of a need above zero, or of all needs just above it. Only where no stem to
  /// come can be better: the stems are complete, or one of them is as large as the need.
  [[nodiscard]] FilledStem<Number> best_for(const Number& need, bool above) const;
  /// The total of the step before the one that meets the need at this price.
  [[nodiscard]] Number step_before(const Number& need, const Number& price, bool above) const;

  [[nodiscard]] Key key_of(const FilledStem<Number>& cover) const {
    return stems_[cover.stem].key + filler_key() * cover.fillers;
  }
  void add_counts(std::size_t stem, ThingCounts<Number>& counts) const;
  [[nodiscard]] ThingCounts<Number> counts_of(const FilledStem<Number>& cover) const;

 private:
  static constexpr ThingIndex no_thing = std::numeric_limits<ThingIndex>::max();

  /// A stem, or an earlier stem and one thing more that may become one.
  struct Stem {
    Key key;
    Number fill{};                // whole filler sizes in the total
    Number residue{};             // total less those
    Number excess{};              // price less the price of so many fillers
    ThingIndex thing = no_thing;  // the one of the earliest row
    std::uint32_t before = 0;     // the stem without it
  };

  /// Candidates of one thing, in ascending order.
  struct Stream {
    Stem head;
    Number fill{};  // of the thing alone
    Number residue{};
    Number excess{};
    bool ready = false;         // whether the head was not refused when it came
    std::size_t looked_at = 0;  // the number of stems it was compared with
  };

  [[nodiscard]] const Number& total_of(const Key& key) const { return key.total(order_); }
  [[nodiscard]] const Number& price_of(const Key& key) const { return key.price(order_); }
  [[nodiscard]] const Number& size_of_filler() const { return total_of(filler_key()); }

  void choose_filler();
  void queue_alone();
  [[nodiscard]] Stream alone(ThingIndex thing) const;
  void move_head(Stream& stream) const;
  [[nodiscard]] bool refused(const Stem& candidate) const;
  bool ready(Stream& stream);
  [[nodiscard]] bool goes_before(const Stem& a, const Stem& b) const;
  Stream* next_stream();
  void start_stream(Stream stream);
  void accept(const Stem& stem);
  [[nodiscard]] FilledStem<Number> filled_for(std::size_t stem, const Number& fill,
                                              const Number& residue, bool above) const;

  std::shared_ptr<const std::vector<PackThing<Number>>> all_;
  std::vector<ThingIndex> things_;
  CoverOrder order_;
  std::shared_ptr<CoverWork> work_;
  ThingIndex filler_ = 0;
  bool complete_ = false;
  std::vector<Stem> stems_;
  std::vector<Stream> alone_;  // things not yet known to be stems, in ascending order
  std::size_t next_alone_ = 0;
  std::vector<Stream> streams_;
  std::optional<Stair<Number>> stair_;
};

extern template class Stems<std::int64_t>;
extern template class Stems<Rational>;

}  // namespace scalepan
