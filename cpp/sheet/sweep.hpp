// One input over many values: what some cells come out as for each.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "exact/word_column.hpp"
#include "sheet/evaluate.hpp"
#include "sheet/path.hpp"

namespace scalepan {

/// Works out a path for one value of its input after the other.
class PathRunner {
 public:
  explicit PathRunner(Path path);
  PathRunner(const PathRunner&) = delete;
  PathRunner& operator=(const PathRunner&) = delete;

  [[nodiscard]] const Path& path() const { return path_; }
  /// In the coherent unit.
  void run(const Rational& input);
  /// After a run.
  [[nodiscard]] const Figures& figures() const { return path_.figures; }

  void keep_number(Cell place, Rational number) {
    path_.figures.keep_number(place, std::move(number));
  }
  void keep(Cell place, const Value& value) { path_.figures.keep(place, value); }
  void hold(Cell place, const HeldError& held) { path_.figures.hold(place, held); }
  void hold_new(Cell place, const Error& error);

 private:
  void run_total(const PathStep& step);

  Path path_;
  const PathStep* step_ = nullptr;  // the one that runs
  Evaluator<PathRunner> evaluator_;
};

/// A point where a cell is no single number: what it is, or the error it holds.
struct OddPoint {
  Value value{};
  std::shared_ptr<const Error> error;
};

/// What one cell comes out as, point by point.
class SweptCell {
 public:
  SweptCell(std::string name, ValueType type) : name_(std::move(name)), type_(type) {}

  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] const ValueType& type() const { return type_; }
  [[nodiscard]] std::size_t size() const { return words_ ? words_->size : numbers_.size(); }
  /// In the coherent unit; 0 at an odd point.
  [[nodiscard]] Rational number(std::size_t point) const;
  [[nodiscard]] const std::map<std::size_t, OddPoint>& odd() const { return odd_; }
  /// In the coherent unit. None where they do not fit, or a point is odd.
  [[nodiscard]] std::shared_ptr<const WordColumn> words() const;

  void put_words(WordColumn words) {
    words_ = std::make_shared<const WordColumn>(std::move(words));
  }
  void resize(std::size_t points) { numbers_.resize(points); }
  void put_number(std::size_t point, const Rational& number) { numbers_[point] = number; }
  void put_odd(std::size_t point, OddPoint odd) { odd_.insert_or_assign(point, std::move(odd)); }

 private:
  std::string name_;
  ValueType type_;
  std::shared_ptr<const WordColumn> words_;
  std::vector<Rational> numbers_;  // where there are no words
  std::map<std::size_t, OddPoint> odd_;
};

struct Sweep {
  std::vector<SweptCell> cells;
  std::string kernel;  // how it was worked out, and where not in machine words, why
};

/// Called now and then with how many points are done; may throw to end it.
using SweepPulse = std::function<void(std::size_t)>;

/// Every output of the path for each value of its input, in the coherent unit.
[[nodiscard]] Sweep sweep(Path path, std::span<const Rational> points, const SweepPulse& pulse);

}  // namespace scalepan
