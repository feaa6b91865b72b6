# scalepan_layer(<name> SOURCES <files> [FAST <files>] [SMALL <files>] [BELOW <layers>])
#
# One layer = one folder = one static library, which links the layers directly below it. FAST names
# the sources whose loops are worth the size that -O3 takes, SMALL those that run once for an answer;
# the wheel has a limit.
function(scalepan_layer name)
  cmake_parse_arguments(LAYER "" "" "SOURCES;FAST;SMALL;BELOW" ${ARGN})
  add_library(scalepan_${name} STATIC ${LAYER_SOURCES} ${LAYER_FAST} ${LAYER_SMALL})
  scalepan_release_level(scalepan_${name} -O2)
  set_source_files_properties(${LAYER_FAST} PROPERTIES COMPILE_OPTIONS "$<${scalepan_release}:-O3>")
  set_source_files_properties(${LAYER_SMALL} PROPERTIES COMPILE_OPTIONS "$<${scalepan_release}:-Os>")
  target_include_directories(scalepan_${name} PUBLIC "${PROJECT_SOURCE_DIR}/cpp")
  target_link_libraries(scalepan_${name} PUBLIC Boost::headers scalepan_options)
  # Read once a layer where the tests are waited for: the wheel's compiler shall see each file alone.
  if(SCALEPAN_SANITIZE)
    target_precompile_headers(scalepan_${name} PRIVATE <algorithm> <map> <memory> <string> <vector>
                              "${PROJECT_SOURCE_DIR}/cpp/exact/rational.hpp")
  endif()
  foreach(below IN LISTS LAYER_BELOW)
    target_link_libraries(scalepan_${name} PUBLIC scalepan_${below})
  endforeach()
endfunction()

# The last -O given counts: that of the target goes before CMake's own, that of a source before both.
set(scalepan_release "$<AND:$<CONFIG:Release>,$<NOT:$<CXX_COMPILER_ID:MSVC>>>")
function(scalepan_release_level target level)
  target_compile_options(${target} PRIVATE "$<${scalepan_release}:${level}>")
  # So that the linker can leave out what nothing calls.
  target_compile_options(${target} PRIVATE "$<${scalepan_release}:-ffunction-sections>"
                                           "$<${scalepan_release}:-fdata-sections>")
endfunction()
