# scalepan_layer(<name> SOURCES <files> [BELOW <layers>])
#
# One layer = one folder = one static library, which links the layers directly below it.
function(scalepan_layer name)
  cmake_parse_arguments(LAYER "" "" "SOURCES;BELOW" ${ARGN})
  add_library(scalepan_${name} STATIC ${LAYER_SOURCES})
  target_include_directories(scalepan_${name} PUBLIC "${PROJECT_SOURCE_DIR}/cpp")
  target_link_libraries(scalepan_${name} PUBLIC Boost::headers scalepan_options)
  foreach(below IN LISTS LAYER_BELOW)
    target_link_libraries(scalepan_${name} PUBLIC scalepan_${below})
  endforeach()
endfunction()
