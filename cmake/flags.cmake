# Flags of our own code only: headers of dependencies come in as SYSTEM.
# -ffp-contract=off: the same figures at every optimisation level and on every machine; a fused multiply-add would move
# the last digit of a gap and could flip a verdict that stands on an edge.
add_library(baywright_flags INTERFACE)
target_compile_options(baywright_flags INTERFACE
  -Wall -Wextra -Wpedantic -Wconversion -Wsign-conversion -Wold-style-cast -Wcast-qual -Wcast-align -Wformat=2
  -Wundef -Woverloaded-virtual -Wdouble-promotion -Wshadow -Wnon-virtual-dtor
  $<$<CXX_COMPILER_ID:GNU>:-Wduplicated-cond -Wduplicated-branches -Wlogical-op>
  -ffp-contract=off -fno-fast-math)
# Errors only under the compilers that we build with: a newer one warns of new things, and would stop somebody who only
# wants to run the program.
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
  # g++ 12 takes `text = yes ? "1" : "0"` for an overlapping copy at -O3.
  target_compile_options(baywright_flags INTERFACE -Werror -Wno-restrict)
elseif(CMAKE_CXX_COMPILER_ID STREQUAL "Clang" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 15)
  target_compile_options(baywright_flags INTERFACE -Werror)
endif()
target_compile_definitions(baywright_flags INTERFACE $<$<NOT:$<CONFIG:Release>>:_GLIBCXX_ASSERTIONS>)
if(BAYWRIGHT_SANITIZE)
  add_compile_options(-fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
  add_link_options(-fsanitize=address,undefined)
endif()
