#pragma once
// The files of shaders/, put into the program by cmake/embedded.cmake: NAME.vert is NAME_vert.

namespace baywright::render::shaders {

extern const char* const surface_vert;
extern const char* const surface_frag;
extern const char* const pattern_frag;
extern const char* const ids_frag;
extern const char* const line_vert;
extern const char* const line_frag;
extern const char* const height_frag;
extern const char* const square_vert;
extern const char* const blur_frag;
extern const char* const ground_frag;

}  // namespace baywright::render::shaders
