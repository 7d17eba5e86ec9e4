// SPDX-License-Identifier: GPL-3.0-or-later
// Holds the compiled-in files; the library needs one source of its own to exist.
namespace outyard::resources {
const char* name();
const char* name() {
  return "outyard";
}
}  // namespace outyard::resources
