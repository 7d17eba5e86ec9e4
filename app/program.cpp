// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/program.h"

#include <QApplication>
#include <QCoreApplication>
#include <QGuiApplication>
#include <QStringList>
#include <QTextStream>
#include <cstdio>
#include <exception>
#include <memory>

#include "app/verbs.h"
#include "app/window.h"
#include "core/base/log.h"

namespace outyard::app {
namespace {

QStringList rawArguments(int argc, char** argv) {
  QStringList list;
  for (int i = 1; i < argc; ++i) list << QString::fromLocal8Bit(argv[i]);
  return list;
}

void nameProgram() {
  QCoreApplication::setApplicationName(QStringLiteral("Outyard"));
  QCoreApplication::setOrganizationName(QStringLiteral("outyard"));
  QCoreApplication::setApplicationVersion(QStringLiteral(OUTYARD_VERSION));
}

/// QPdfWriter aborts without a QGuiApplication, and that one aborts without a display.
void useOffscreenWithoutDisplay() {
  if (qEnvironmentVariableIsEmpty("DISPLAY") && qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY") &&
      qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) {
    qputenv("QT_QPA_PLATFORM", QByteArray("offscreen"));
  }
}

bool isCommand(const QStringList& arguments) {
  if (arguments.isEmpty()) return false;
  const QString& first = arguments.first();
  return findVerb(first) || first == QLatin1String("--help") || first == QLatin1String("-h") ||
         first == QLatin1String("--version") || first == QLatin1String("-v") ||
         first == QLatin1String("help");
}

/// Notes of the platform (no runtime folder, no session bus) are not the user's business.
void toLog(QtMsgType, const QMessageLogContext&, const QString& text) {
  base::log(text.toStdString());
}

int runCommand(int argc, char** argv, const QStringList& arguments) {
  qInstallMessageHandler(toLog);
  const Verb* verb = findVerb(arguments.first());
  std::unique_ptr<QCoreApplication> application;
  if (verb && verb->needsFonts) {
    useOffscreenWithoutDisplay();
    application = std::make_unique<QGuiApplication>(argc, argv);
  } else {
    application = std::make_unique<QCoreApplication>(argc, argv);
  }
  nameProgram();
  QTextStream out(stdout), err(stderr);
  const int code = runVerb(arguments, Streams{out, err});
  out.flush();
  err.flush();
  return code;
}

}  // namespace

int runProgram(int argc, char** argv) {
  // A bug throws; it is caught once, here, logged, and never shown raw.
  try {
    const QStringList arguments = rawArguments(argc, argv);
    if (isCommand(arguments)) return runCommand(argc, argv, arguments);
    if (!arguments.isEmpty() && arguments.first().startsWith(u'-')) {
      std::fprintf(stderr, "outyard: unknown option %s; see outyard --help\n", argv[1]);
      return kUsage;
    }
    useOffscreenWithoutDisplay();
    QApplication application(argc, argv);
    nameProgram();
    return runWindow(arguments.isEmpty() ? QString() : arguments.first());
  } catch (const std::exception& e) {
    base::log(std::string("bug: ") + e.what());
    std::fprintf(stderr,
                 "outyard: the program made a mistake of its own and stopped; the season file is "
                 "as it was after the last finished step.\n");
    return kDataFault;
  }
}

}  // namespace outyard::app
