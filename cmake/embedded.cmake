# Files that are part of the program.
# embed(TARGET HEADER NAMESPACE TYPE FILES...): each file becomes a constant of TYPE in baywright::NAMESPACE, which HEADER
# declares, named after the file with what is no letter or digit as `_`.
function(embed target header namespace type)
  string(MAKE_C_IDENTIFIER "${header}" source)
  set(source "${CMAKE_BINARY_DIR}/embedded/${source}.cpp")
  set(body "#include \"${header}\"\n\nnamespace baywright::${namespace} {\n\n")
  foreach(file IN LISTS ARGN)
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS "${file}")
    file(READ "${file}" text)
    string(FIND "${text}" ")embedded\"" end)
    if(NOT end EQUAL -1)
      message(FATAL_ERROR "${file} holds what ends a string of C++")
    endif()
    cmake_path(GET file FILENAME name)
    string(MAKE_C_IDENTIFIER "${name}" name)
    string(APPEND body "${type} ${name} = R\"embedded(${text})embedded\";\n\n")
  endforeach()
  string(APPEND body "}  // namespace baywright::${namespace}\n")
  file(CONFIGURE OUTPUT "${source}" CONTENT "@body@" @ONLY)
  target_sources(${target} PRIVATE "${source}")
endfunction()

file(GLOB shaders CONFIGURE_DEPENDS "${CMAKE_SOURCE_DIR}/shaders/*.vert" "${CMAKE_SOURCE_DIR}/shaders/*.frag")
embed(render render/shaders.h render::shaders "const char* const" ${shaders})

# What pages bring along: three.js with its licence, and the scripts and styles that stand beside their sources.
file(GLOB page_files CONFIGURE_DEPENDS "${CMAKE_SOURCE_DIR}/src/output/*.js" "${CMAKE_SOURCE_DIR}/src/output/*.css")
embed(output output/embedded.h output::embedded "const std::string_view" "${three_script}"
      "${CMAKE_SOURCE_DIR}/third_party/three.licence.txt" ${page_files})
