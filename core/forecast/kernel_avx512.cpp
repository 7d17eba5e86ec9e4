// SPDX-License-Identifier: GPL-3.0-or-later
#define OUTYARD_LANES 16
#define OUTYARD_PATH runAvx512
#include "core/forecast/kernel_impl.inc"
