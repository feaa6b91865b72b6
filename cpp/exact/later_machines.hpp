// Functions in two builds, of which the loader takes the one that the machine is good at.
#pragma once

#include <cstdlib>  // says whether this is glibc

// Where the loader can choose between two builds of a function, one is for AVX2. Sanitizers are not
// ready yet when it does.
#if defined(__GNUC__) && !defined(__clang__) && defined(__x86_64__) && defined(__GLIBC__) && \
    !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)
#define SCALEPAN_FOR_LATER_MACHINES_TOO [[gnu::target_clones("avx2", "default")]]
#else
#define SCALEPAN_FOR_LATER_MACHINES_TOO
#endif
