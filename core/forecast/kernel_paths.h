// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>

#include "core/forecast/kernel.h"

/// The same source compiled for each instruction set; kernel.cpp picks one when the program runs.
namespace outyard::forecast {

void runBaseline(Ensemble&, const Drivers&, int from, int to, std::span<const int>, Outputs&);
void runAvx2(Ensemble&, const Drivers&, int from, int to, std::span<const int>, Outputs&);
void runAvx512(Ensemble&, const Drivers&, int from, int to, std::span<const int>, Outputs&);

}  // namespace outyard::forecast
