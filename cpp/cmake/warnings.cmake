# One interface target carries the warnings, and the sanitizers where asked for.
add_library(scalepan_options INTERFACE)
target_compile_features(scalepan_options INTERFACE cxx_std_20)
target_compile_options(
  scalepan_options
  INTERFACE $<$<CXX_COMPILER_ID:GNU,Clang,AppleClang>:-Wall -Wextra -Wpedantic -Wshadow
            -Wconversion -Wsign-conversion -Wnon-virtual-dtor -Wold-style-cast>
            $<$<CXX_COMPILER_ID:MSVC>:/W4 /utf-8>)
# g++ 12 sees a false overlap in "text" + std::string, and an empty std::optional as uninitialised.
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
  target_compile_options(scalepan_options INTERFACE -Wno-restrict -Wno-maybe-uninitialized)
endif()
if(SCALEPAN_WARNINGS_AS_ERRORS)
  target_compile_options(scalepan_options
                         INTERFACE $<IF:$<CXX_COMPILER_ID:MSVC>,/WX,-Werror>)
endif()
if(SCALEPAN_SANITIZE)
  target_compile_options(
    scalepan_options INTERFACE -fsanitize=${SCALEPAN_SANITIZE} -fno-sanitize-recover=all
                               -fno-omit-frame-pointer)
  target_link_options(scalepan_options INTERFACE -fsanitize=${SCALEPAN_SANITIZE})
endif()
if(SCALEPAN_FUZZ)
  target_compile_options(scalepan_options INTERFACE -fsanitize=fuzzer-no-link)
endif()
if(SCALEPAN_PORTABLE_WIDE)
  target_compile_definitions(scalepan_options INTERFACE SCALEPAN_PORTABLE_WIDE)
endif()
