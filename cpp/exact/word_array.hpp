// Many words in a row, not set to anything yet.
#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <new>

#ifdef __linux__
#include <sys/mman.h>
#endif

namespace scalepan {

inline constexpr std::size_t large_page = std::size_t{1} << 21U;

struct FreeWords {
  void operator()(std::int64_t* words) const {
    ::operator delete[](words, std::align_val_t{large_page});
  }
};

using WordArray = std::unique_ptr<std::int64_t[], FreeWords>;

/// To be written to before it is read. On large pages, where the system has them: to be given
/// thousands of small ones takes longer than to fill them.
[[nodiscard]] inline WordArray word_array(std::size_t size) {
  const std::size_t bytes = size * sizeof(std::int64_t);
  void* const memory = ::operator new[](bytes, std::align_val_t{large_page});
#ifdef __linux__
  // Where this is refused, small pages do.
  if (bytes >= large_page) static_cast<void>(madvise(memory, bytes, MADV_HUGEPAGE));
#endif
  return WordArray(::new (memory) std::int64_t[size]);
}

}  // namespace scalepan
