// A chain of doubles, worked out without a sheet: no names, formulas, errors or history.
#pragma once

#include <cstdint>
#include <vector>

#include "sheet/due.hpp"

namespace peers {

/// values[i] = values[input[i]] + 1, from bottom to top: the least that an edit of such a chain can
/// cost where the inputs are not known beforehand.
class DoubleLoop {
 public:
  explicit DoubleLoop(std::size_t formulas) : values_(formulas + 1), inputs_(formulas + 1) {
    for (std::size_t i = 1; i <= formulas; ++i) inputs_[i] = static_cast<std::uint32_t>(i - 1);
  }

  void edit(double value) {
    values_[0] = value;
    for (std::size_t i = 1; i < values_.size(); ++i) values_[i] = values_[inputs_[i]] + 1.0;
  }
  [[nodiscard]] double top() const { return values_.back(); }

 private:
  std::vector<double> values_;
  std::vector<std::uint32_t> inputs_;
};

/// The same by what is due alone: readers of a cell become due where it came out another than
/// before, from low to high.
class DoubleEngine {
 public:
  explicit DoubleEngine(std::size_t formulas)
      : values_(formulas + 1), inputs_(formulas + 1), first_reader_(formulas + 2) {
    records_.resize(formulas + 1);
    for (std::size_t i = 1; i <= formulas; ++i) {
      inputs_[i] = static_cast<std::uint32_t>(i - 1);
      readers_.push_back(static_cast<std::uint32_t>(i));
      first_reader_[i] = static_cast<std::uint32_t>(i);
    }
    first_reader_.back() = first_reader_[formulas];
  }

  void edit(double value) {
    keep(0, value);
    while (!due_.empty()) {
      const std::uint32_t cell = due_.take();
      keep(cell, values_[inputs_[cell]] + 1.0);
    }
  }
  [[nodiscard]] double top() const { return values_.back(); }

 private:
  void keep(std::uint32_t cell, double value) {
    if (values_[cell] == value) return;
    values_[cell] = value;
    for (std::uint32_t at = first_reader_[cell]; at < first_reader_[cell + 1]; ++at) {
      due_.add(readers_[at], readers_[at]);
    }
  }

  std::vector<double> values_;
  std::vector<std::uint32_t> inputs_;
  std::vector<std::uint32_t> readers_;
  std::vector<std::uint32_t> first_reader_;  // by cell, and where the last one's end
  scalepan::CellRecords records_;
  scalepan::DueCells due_{records_};
};

}  // namespace peers
