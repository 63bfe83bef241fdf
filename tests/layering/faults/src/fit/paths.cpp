// Only what is said below is a fault; this is none: #include "cli/main.h"
/* nor this:
#include "cli/main.h"
*/
const char* text = R"(
#include "cli/main.h"
)";
const char* slashes = "//"; const int digits = 1'000;
#include "fit/finding.h"
#include <vector>
#include "../fit/finding.h"
#include "./paths.h"
#include "fit/nowhere.h"
#include "fit/whole.cpp"
#include <fit/finding.h>
#include FINDING
#if 0
#include <somebody/elses.h>
#endif
