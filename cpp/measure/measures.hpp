// Which cup, spoon and pint are meant.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>
#include <utility>

namespace scalepan {

enum class Measures : std::uint8_t { unstated, metric, us, imperial, au };

inline constexpr std::array<std::pair<Measures, std::string_view>, 4> all_measures{{
    {Measures::metric, "metric"},
    {Measures::us, "us"},
    {Measures::imperial, "imperial"},
    {Measures::au, "au"},
}};

/// `us`, `metric`, ...; empty where unstated.
[[nodiscard]] std::string_view name_of(Measures measures);
/// In small or capital letters; empty reads as unstated. Throws `unit.measures` with the names
/// there are.
[[nodiscard]] Measures measures_named(std::string_view name);

}  // namespace scalepan
