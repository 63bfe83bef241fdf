# Dependencies are found, never downloaded. `./start` installs what packages.txt lists.
# need(LIBRARY PACKAGE WHY [find_package arguments...])
macro(need library package why)
  find_package(${library} QUIET ${ARGN})
  if(NOT ${library}_FOUND)
    message(FATAL_ERROR "${library} is missing: install ${package} (needed for ${why}), or run ./start")
  endif()
endmacro()

# The same for a library without a CMake package that could be asked for alone: its headers go into NAME_headers, its
# libraries into NAME_libraries.
macro(need_files name package why header folder)
  find_path(${name}_headers ${header} PATH_SUFFIXES ${folder})
  set(${name}_libraries "")
  foreach(library ${ARGN})
    find_library(${name}_${library} ${library})
    list(APPEND ${name}_libraries ${${name}_${library}})
  endforeach()
  if(NOT ${name}_headers OR "${${name}_libraries}" MATCHES "NOTFOUND")
    message(FATAL_ERROR "${name} is missing: install ${package} (needed for ${why}), or run ./start")
  endif()
endmacro()

need(glm libglm-dev "vectors in every room that knows shapes")
need_files(polyclipping libpolyclipping-dev "areas of drawings" polyclipping/clipper.hpp "" polyclipping)
need(tomlplusplus libtomlplusplus-dev "build and part files")
need(tinyobjloader libtinyobjloader-dev "models of parts (OBJ)")
need(nlohmann_json nlohmann-json3-dev "check --json")
need(CLI11 libcli11-dev "the command line")

if(BAYWRIGHT_TESTS OR BAYWRIGHT_BENCH)
  need(fcl libfcl-dev "the reference for distances")
  need_files(bullet libbullet-dev "a second reference for distances"
             BulletCollision/NarrowPhaseCollision/btGjkPairDetector.h bullet BulletCollision-float64 LinearMath-float64)
endif()
if(BAYWRIGHT_TESTS)
  need(doctest doctest-dev "the tests")
  need_files(cgal libcgal-dev "the exact reference for distances"
             CGAL/Exact_predicates_exact_constructions_kernel.h "" gmp mpfr)
  # Its own CMake package demands all of its parts, and two hundred megabytes with them.
  need_files(occt "libocct-modeling-algorithms-dev and libocct-modeling-data-dev" "the reference for round solids"
             BRepExtrema_DistShapeShape.hxx opencascade TKPrim TKBO TKTopAlgo TKBRep TKMath TKernel)
  need(Python3 python3 "the tests of includes, headers and schemas" COMPONENTS Interpreter)
endif()
if(BAYWRIGHT_BENCH)
  need(benchmark libbenchmark-dev "the benchmarks")
endif()
