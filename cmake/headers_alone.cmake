# Each header of src compiles alone. X.cpp begins with X.h (tests/layering holds that), which proves it for most; for each
# of the others here is one source that holds nothing else. A part of the build, so that ninja repeats only what changed.
file(GLOB headers CONFIGURE_DEPENDS "${CMAKE_SOURCE_DIR}/src/*/*.h")
foreach(header IN LISTS headers)
  cmake_path(REPLACE_EXTENSION header LAST_ONLY cpp OUTPUT_VARIABLE source)
  if(NOT EXISTS "${source}")
    cmake_path(RELATIVE_PATH header BASE_DIRECTORY "${CMAKE_SOURCE_DIR}/src" OUTPUT_VARIABLE name)
    set(alone "${CMAKE_CURRENT_BINARY_DIR}/headers_alone/${name}.cpp")
    file(CONFIGURE OUTPUT "${alone}" CONTENT "#include \"@name@\"\n" @ONLY)
    list(APPEND alones "${alone}")
  endif()
endforeach()
add_library(headers_alone OBJECT ${alones})
target_include_directories(headers_alone PRIVATE "${CMAKE_SOURCE_DIR}/src")
target_include_directories(headers_alone SYSTEM PRIVATE ${imgui_headers} ${epoxy_headers} ${cairo_headers} ${freetype_headers})
target_link_libraries(headers_alone PRIVATE baywright_flags glm::glm tomlplusplus::tomlplusplus
                                            nlohmann_json::nlohmann_json CLI11::CLI11)
