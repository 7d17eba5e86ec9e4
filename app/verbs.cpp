// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/verbs.h"

#include <QCoreApplication>

#include "app/verb_list.h"

namespace outyard::app {
namespace {

void printHelp(QTextStream& out) {
  out << QCoreApplication::translate(
             "CommandLine",
             "Outyard %1: apiary manager with yard map and boost planner\n\n"
             "outyard [FILE]           opens the window\n"
             "outyard VERB ARGUMENTS   works without a display:\n\n")
             .arg(QStringLiteral(OUTYARD_VERSION));
  for (const Verb& v : verbs()) {
    out << "  " << QString::fromUtf8(v.name).leftJustified(10)
        << QCoreApplication::translate("CommandLine", v.summary) << '\n';
  }
  out << QCoreApplication::translate(
      "CommandLine",
      "\noutyard VERB --help says more. Tables go to standard output as CSV (--json for JSON).\n"
      "Exit code 0 done, 1 the data or the file is at fault, 2 wrong usage.\n");
}

}  // namespace

const std::vector<Verb>& verbs() {
  static const std::vector<Verb> list{newVerb(),      importVerb(),   exportVerb(),
                                      estimateVerb(), forecastVerb(), boostVerb(),
                                      seasonVerb(),   sheetVerb(),    checkVerb()};
  return list;
}

const Verb* findVerb(const QString& name) {
  for (const Verb& v : verbs()) {
    if (name == QLatin1String(v.name)) return &v;
  }
  return nullptr;
}

int runVerb(const QStringList& arguments, Streams streams) {
  const QString first = arguments.value(0);
  if (first == QLatin1String("--version") || first == QLatin1String("-v")) {
    streams.out << "Outyard " << OUTYARD_VERSION << '\n';
    return kDone;
  }
  const Verb* verb = findVerb(first);
  if (!verb) {
    const bool asked = first == QLatin1String("--help") || first == QLatin1String("-h") ||
                       first == QLatin1String("help");
    printHelp(asked ? streams.out : streams.err);
    return asked ? kDone : kUsage;
  }
  QCommandLineParser parser;
  parser.setApplicationDescription(QCoreApplication::translate("CommandLine", verb->summary));
  const QCommandLineOption help({QStringLiteral("h"), QStringLiteral("help")},
                                QCoreApplication::translate("CommandLine", "Says this."));
  parser.addOption(help);
  verb->describe(parser);
  // The parser takes its first argument as the name of the program.
  QStringList words = arguments;
  words[0] = QStringLiteral("outyard ") + first;
  if (!parser.parse(words)) {
    streams.err << "outyard " << first << ": " << parser.errorText() << '\n';
    return kUsage;
  }
  if (parser.isSet(help)) {
    // Qt's text names the running file; ours names the verb.
    QString text = parser.helpText();
    const qsizetype cut = text.indexOf(u'\n');
    text = QCoreApplication::translate("CommandLine", "Usage: outyard %1").arg(first) +
           QStringLiteral(" [options] FILE") + text.mid(cut);
    streams.out << text;
    return kDone;
  }
  const QStringList positional = parser.positionalArguments();
  if (positional.size() < verb->leastArguments) {
    streams.err << QCoreApplication::translate("CommandLine",
                                               "outyard %1: the season FILE is missing; see "
                                               "outyard %1 --help\n")
                       .arg(first);
    return kUsage;
  }
  if (positional.size() > verb->leastArguments) {
    streams.err << QCoreApplication::translate("CommandLine",
                                               "outyard %1: \"%2\" is one argument too many\n")
                       .arg(first, positional.last());
    return kUsage;
  }
  return verb->run(parser, positional, streams);
}

}  // namespace outyard::app
