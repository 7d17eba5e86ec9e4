// SPDX-License-Identifier: GPL-3.0-or-later
#define OUTYARD_LANES 4
#define OUTYARD_PATH runBaseline
#include "core/forecast/kernel_impl.inc"
