#include <atomic>
#include <thread>

#include "catch.hpp"
#include "sheet/sheets.hpp"

using namespace scalepan;

namespace {

constexpr int rounds = 400;

/// A pair of cells that always add up to ten, whoever looks.
std::unique_ptr<Sheet> balance() {
  return sheet_of({Set{"left", number(4)}, Define{"right", "10 - left"},
                   Define{"all", "left + right"}, Define{"share", "left / all"}});
}

}  // namespace

TEST_CASE("sheet/thread: readers see whole changes while one thread writes") {
  const auto sheet = balance();
  std::atomic<bool> done{false};
  std::atomic<int> wrong{0};
  const auto read = [&] {
    while (!done) {
      if (!(number_in(*sheet, "all") == 10)) ++wrong;
      if (text_of(sheet->why("share")).find("left / all") == std::string::npos) ++wrong;
      const Sweep swept =
          sheet->sweep("left", {Quantity(Rational(1)), Quantity(Rational(2))}, {"share"}, no_pulse);
      if (!(swept.cells[0].number(1) == Rational(1, 5))) ++wrong;
      if (sheet->changes().size() < 4) ++wrong;
    }
  };
  std::thread first(read);
  std::thread second(read);
  for (int i = 0; i < rounds; ++i) {
    sheet->apply({Set{"left", number(Rational(i, 7))}});
    sheet->apply({Define{"extra", "share * " + std::to_string(i)}});
    sheet->apply({Remove{"extra"}});
    if (i % 5 == 0) sheet->undo();
  }
  done = true;
  first.join();
  second.join();
  CHECK(wrong == 0);
}

TEST_CASE("sheet/thread: two threads work on two sheets side by side") {
  const auto work = [] {
    const auto sheet = balance();
    for (int i = 0; i < rounds; ++i) {
      sheet->apply({Set{"left", number(i)}, Define{"twice", "left * 2"}});
      if (!(number_in(*sheet, "twice") == 2 * i)) return false;
    }
    return true;
  };
  bool one = false;
  bool other = false;
  std::thread first([&] { one = work(); });
  std::thread second([&] { other = work(); });
  first.join();
  second.join();
  CHECK(one);
  CHECK(other);
}
