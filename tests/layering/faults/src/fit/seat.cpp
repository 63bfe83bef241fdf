// Its own header comes too late.
#include <vector>
#include "fit/seat.h"
