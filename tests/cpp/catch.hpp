// Catch2, whichever of its two interfaces is installed: 2 (one header) or 3 (many).
#pragma once

#if __has_include(<catch2/catch_test_macros.hpp>)
#include <catch2/catch_test_macros.hpp>
#include <catch2/catch_tostring.hpp>
#else
#include <catch2/catch.hpp>
#endif
