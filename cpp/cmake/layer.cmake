# scalepan_layer(<name> [SMALL] SOURCES <files> [BELOW <layers>])
#
# One layer = one folder = one static library, which links the layers directly below it. SMALL is
# for code that runs once a line of text: it is built for size, which keeps the wheel small.
function(scalepan_layer name)
  cmake_parse_arguments(LAYER "SMALL" "" "SOURCES;BELOW" ${ARGN})
  add_library(scalepan_${name} STATIC ${LAYER_SOURCES})
  if(LAYER_SMALL)
    scalepan_build_small(scalepan_${name})
  endif()
  target_include_directories(scalepan_${name} PUBLIC "${PROJECT_SOURCE_DIR}/cpp")
  target_link_libraries(scalepan_${name} PUBLIC Boost::headers scalepan_options)
  foreach(below IN LISTS LAYER_BELOW)
    target_link_libraries(scalepan_${name} PUBLIC scalepan_${below})
  endforeach()
endfunction()

# A release build of the target for size. The last -O given counts, so this one goes to the target.
function(scalepan_build_small target)
  target_compile_options(${target} PRIVATE $<$<AND:$<CONFIG:Release>,$<NOT:$<CXX_COMPILER_ID:MSVC>>>:-Os>)
endfunction()
