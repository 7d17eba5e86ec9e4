// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QCommandLineParser>
#include <QStringList>
#include <QTextStream>
#include <functional>
#include <vector>

namespace outyard::app {

/// Exit codes of the command line: done; the data or the file is at fault; wrong usage.
enum ExitCode { kDone = 0, kDataFault = 1, kUsage = 2 };

/// Where a verb writes: tables to out, progress and messages to err.
struct Streams {
  QTextStream& out;
  QTextStream& err;
};

/// One verb of the command line.
struct Verb {
  const char* name;
  const char* summary;
  /// Adds its options and positional arguments to the parser.
  std::function<void(QCommandLineParser&)> describe;
  /// Runs on the parsed arguments (without the verb itself); the season FILE comes first.
  std::function<int(const QCommandLineParser&, const QStringList&, Streams)> run;
  int leastArguments = 1;
  bool needsFonts = false;  ///< lays out text: wants a QGuiApplication
};

/// new, import, export, estimate, forecast, boost, sheet, check.
const std::vector<Verb>& verbs();
const Verb* findVerb(const QString& name);

/// Parses and runs "VERB ARGUMENTS..."; also --help and --version. The caller has made the
/// application object.
int runVerb(const QStringList& arguments, Streams streams);

}  // namespace outyard::app
