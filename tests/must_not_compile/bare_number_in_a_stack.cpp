// Nor does a bare number stand in a chain: `explain` could say neither its limits nor where it comes from.
#include "tolerance/stack.h"

using baywright::tolerance::Dimension;
using baywright::tolerance::Term;

const Dimension height{"height under the tray", 9.1, 0.2, 0.2, "caliper, three places"};
#ifdef FAULT
inline const Term term{1.0, 9.1};  // refused: cannot (convert .*double.* to|initialize a member .* of type .*double)
#else
inline const Term term{1.0, &height};
#endif
