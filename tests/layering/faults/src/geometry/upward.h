#pragma once
#include "fit/finding.h"
