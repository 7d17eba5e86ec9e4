// SPDX-License-Identifier: GPL-3.0-or-later
#define OUTYARD_LANES 8
#define OUTYARD_PATH runAvx2
#include "core/forecast/kernel_impl.inc"
