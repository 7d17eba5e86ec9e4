// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace outyard::base {

/// Handed into long work: told how far it is, asked whether to go on. The default does nothing.
class Progress {
 public:
  virtual ~Progress() = default;
  /// fraction in [0, 1], never falling.
  virtual void report(double /*fraction*/) {}
  /// True once the user has asked to stop; the work then ends early and changes nothing.
  [[nodiscard]] virtual bool cancelled() const { return false; }
};

}  // namespace outyard::base
