// Derivations: how a figure came about, as a tree down to what was given.
#pragma once

#include <string>
#include <vector>

namespace scalepan {

struct Why {
  std::string name;    // `leeks.buy`
  std::string figure;  // `125000/11 g AP`, with the short form where it is longer
  std::string how;     // `need / edible`; empty for something given
  std::string source;  // of something given: a fact's source, a place in a file
  std::vector<Why> parts;
};

/// The tree as lines of text.
[[nodiscard]] std::string text_of(const Why& why);
/// The tree as HTML, whose branches open and close; nothing in it is taken for markup.
[[nodiscard]] std::string html_of(const Why& why);

}  // namespace scalepan
