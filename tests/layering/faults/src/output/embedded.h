#pragma once
extern const char* leaves_js;
// lost_css;
