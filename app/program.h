// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace outyard::app {

/// The whole program: with a verb it works as a command, without one it opens the window. Chooses
/// the application class before making it, so that no verb needs a display.
int runProgram(int argc, char** argv);

}  // namespace outyard::app
