// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QCommandLineParser>
#include <QCoreApplication>

namespace outyard::app {

/// Text of the command line, for translators.
inline QString say(const char* text) {
  return QCoreApplication::translate("CommandLine", text);
}

inline void option(QCommandLineParser& p, const char* name, const char* text,
                   const char* value = nullptr) {
  p.addOption(QCommandLineOption(QString::fromUtf8(name), say(text),
                                 value ? QString::fromUtf8(value) : QString()));
}
inline void fileArgument(QCommandLineParser& p) {
  p.addPositionalArgument(QStringLiteral("FILE"), say("The season file."));
}
inline void jsonOption(QCommandLineParser& p) {
  option(p, "json", "Prints JSON instead of CSV.");
}

}  // namespace outyard::app
