// One entry a fuzzer: any text either reads or ends in the one error type.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "exact/error.hpp"

namespace scalepan::fuzz {

template <typename Read>
void reads_or_refuses(Read read) {
  try {
    read();
  } catch (const Error& error) {
    if (error.code().empty() || error.message().empty()) std::abort();
  }
}

inline std::string_view text_of(const std::uint8_t* data, std::size_t size) {
  return {reinterpret_cast<const char*>(data), size};
}

/// Ends the run: what was found contradicts what the grammar promises.
inline void expect(bool holds) {
  if (!holds) std::abort();
}

}  // namespace scalepan::fuzz
