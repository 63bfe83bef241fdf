// A length with no source and no limits is not a dimension.
#include "tolerance/dimension.h"

using baywright::tolerance::Dimension;

#ifdef FAULT
const Dimension height = 9.1;  // refused: conversion from .*double.* requested|no viable conversion from .*double
#else
const Dimension height{"height under the tray", 9.1, 0.2, 0.2, "caliper, three places"};
#endif
