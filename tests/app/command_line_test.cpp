// SPDX-License-Identifier: GPL-3.0-or-later
// Runs the program itself, without a display, as a user of the command line would.
#include <gtest/gtest.h>

#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QTemporaryDir>

namespace {

struct Ran {
  int code = -1;
  QByteArray out, err;
};

Ran outyard(const QStringList& arguments) {
  QProcess process;
  QProcessEnvironment env = QProcessEnvironment::systemEnvironment();
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}) {
    env.remove(QString::fromUtf8(name));
  }
  process.setProcessEnvironment(env);
  process.start(QStringLiteral(OUTYARD_PROGRAM), arguments);
  EXPECT_TRUE(process.waitForFinished(120000));
  EXPECT_EQ(process.exitStatus(), QProcess::NormalExit) << arguments.join(u' ').toStdString();
  return {process.exitCode(), process.readAllStandardOutput(), process.readAllStandardError()};
}

QByteArray hashOf(const QString& path) {
  QFile file(path);
  EXPECT_TRUE(file.open(QIODevice::ReadOnly));
  return QCryptographicHash::hash(file.readAll(), QCryptographicHash::Sha256);
}

QList<QByteArray> lines(const QByteArray& text) {
  auto list = text.split('\n');
  if (!list.isEmpty() && list.last().isEmpty()) list.removeLast();
  return list;
}

class CommandLine : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    s_folder = new QTemporaryDir;
    s_sample = new QString(s_folder->filePath(QStringLiteral("s.outyard")));
    const Ran made = outyard({QStringLiteral("new"), *s_sample, QStringLiteral("--sample")});
    ASSERT_EQ(made.code, 0) << made.err.toStdString();
  }
  static void TearDownTestSuite() {
    delete s_sample;
    delete s_folder;
  }
  static QString file(const char* name) { return s_folder->filePath(QString::fromUtf8(name)); }
  static QString firstYard() {
    const Ran r =
        outyard({QStringLiteral("export"), *s_sample, QStringLiteral("--csv"), file("tables")});
    EXPECT_EQ(r.code, 0) << r.err.toStdString();
    QFile yards(file("tables/yards.csv"));
    EXPECT_TRUE(yards.open(QIODevice::ReadOnly));
    yards.readLine();
    return QString::fromUtf8(yards.readLine().split(',').first());
  }
  static QTemporaryDir* s_folder;
  static QString* s_sample;
};
QTemporaryDir* CommandLine::s_folder = nullptr;
QString* CommandLine::s_sample = nullptr;

TEST_F(CommandLine, SaysVersionAndHelp) {
  EXPECT_TRUE(outyard({QStringLiteral("--version")}).out.startsWith("Outyard "));
  const Ran help = outyard({QStringLiteral("--help")});
  EXPECT_EQ(help.code, 0);
  for (const char* verb :
       {"new", "import", "export", "estimate", "forecast", "boost", "sheet", "check"}) {
    EXPECT_TRUE(help.out.contains(verb)) << verb;
    const Ran own = outyard({QString::fromUtf8(verb), QStringLiteral("--help")});
    EXPECT_EQ(own.code, 0) << verb;
    EXPECT_TRUE(own.out.contains("FILE")) << verb << own.out.toStdString();
  }
}

TEST_F(CommandLine, WrongUsageExitsWithTwo) {
  const QList<QStringList> cases{
      {QStringLiteral("estimate")},
      {QStringLiteral("--frobnicate")},
      {QStringLiteral("estimate"), *s_sample, QStringLiteral("--frobnicate")},
      {QStringLiteral("estimate"), *s_sample, QStringLiteral("--date"), QStringLiteral("1.5.26")},
      {QStringLiteral("boost"), *s_sample},
      {QStringLiteral("import"), *s_sample},
      {QStringLiteral("sheet"), *s_sample, QStringLiteral("--yard"), QStringLiteral("x")},
      {QStringLiteral("new"), *s_sample, QStringLiteral("extra")}};
  for (const auto& c : cases) {
    const Ran r = outyard(c);
    EXPECT_EQ(r.code, 2) << c.join(u' ').toStdString() << r.err.toStdString();
    EXPECT_FALSE(r.err.isEmpty());
    EXPECT_TRUE(r.out.isEmpty());
  }
}

TEST_F(CommandLine, DataFaultsExitWithOneAndChangeNothing) {
  const QByteArray before = hashOf(*s_sample);
  QFile text(file("text.outyard"));
  ASSERT_TRUE(text.open(QIODevice::WriteOnly));
  text.write("not a season");
  text.close();
  const QList<QStringList> cases{
      {QStringLiteral("new"), *s_sample},
      {QStringLiteral("estimate"), file("missing.outyard")},
      {QStringLiteral("estimate"), file("text.outyard")},
      {QStringLiteral("estimate"), *s_sample, QStringLiteral("--yard"), QStringLiteral("nowhere")},
      {QStringLiteral("estimate"), *s_sample, QStringLiteral("--hive"), QStringLiteral("none")},
      {QStringLiteral("boost"), *s_sample, QStringLiteral("--yard"), QStringLiteral("nowhere")},
      {QStringLiteral("import"), *s_sample, QStringLiteral("--csv"), file("no-folder")},
      {QStringLiteral("sheet"), *s_sample, QStringLiteral("--yard"), QStringLiteral("nowhere"),
       QStringLiteral("--out"), file("x.pdf")}};
  for (const auto& c : cases) {
    const Ran r = outyard(c);
    EXPECT_EQ(r.code, 1) << c.join(u' ').toStdString() << r.err.toStdString();
    EXPECT_FALSE(r.err.trimmed().isEmpty()) << c.join(u' ').toStdString();
    EXPECT_TRUE(r.out.isEmpty());
  }
  EXPECT_EQ(hashOf(*s_sample), before);
  EXPECT_FALSE(QFile::exists(file("missing.outyard")));
}

TEST_F(CommandLine, EstimatesEveryColony) {
  const Ran r = outyard({QStringLiteral("estimate"), *s_sample});
  ASSERT_EQ(r.code, 0) << r.err.toStdString();
  const auto rows = lines(r.out);
  EXPECT_EQ(rows.first(),
            "hive,colony,seen_on,bees,bees_low,bees_high,sealed_cells,sealed_low,sealed_high,"
            "open_cells,honey_kg,honey_low,honey_high,basis");
  EXPECT_GT(rows.size(), 100);
  for (qsizetype i = 1; i < rows.size(); ++i) {
    const auto cells = rows[i].split(',');
    ASSERT_EQ(cells.size(), 14) << rows[i].toStdString();
    if (cells[3].isEmpty()) continue;
    EXPECT_LE(cells[4].toDouble(), cells[3].toDouble());
    EXPECT_GE(cells[5].toDouble(), cells[3].toDouble());
    EXPECT_LT(cells[3].toDouble(), 80000);
  }
}

TEST_F(CommandLine, ForecastsWithBandsAndTheSameEveryTime) {
  const QStringList ask{QStringLiteral("forecast"), *s_sample,
                        QStringLiteral("--yard"),   firstYard(),
                        QStringLiteral("--to"),     QStringLiteral("2026-06-10"),
                        QStringLiteral("--step"),   QStringLiteral("14")};
  const Ran r = outyard(ask);
  ASSERT_EQ(r.code, 0) << r.err.toStdString();
  EXPECT_EQ(outyard(ask).out, r.out);
  const auto rows = lines(r.out);
  EXPECT_EQ(rows.first(),
            "hive,colony,date,bees,bees_low,bees_high,sealed_cells,sealed_low,sealed_high,"
            "brood_cells,brood_low,brood_high,honey_kg,honey_low,honey_high,seen_bees,seen_low,"
            "seen_high");
  ASSERT_GT(rows.size(), 50);
  for (qsizetype i = 1; i < rows.size(); ++i) {
    const auto cells = rows[i].split(',');
    ASSERT_EQ(cells.size(), 18) << rows[i].toStdString();
    for (const int k : {3, 6, 9, 12, 15}) {
      EXPECT_LE(cells[k + 1].toDouble(), cells[k].toDouble()) << rows[i].toStdString();
      EXPECT_GE(cells[k + 2].toDouble(), cells[k].toDouble()) << rows[i].toStdString();
    }
    EXPECT_LT(cells[3].toDouble(), 80000);
    EXPECT_LE(cells[15].toDouble(), cells[3].toDouble() * 1.2);
  }
  EXPECT_EQ(outyard({QStringLiteral("forecast"), *s_sample}).code, 2) << "--to is missing";
}

TEST_F(CommandLine, ARoundTripLosesNothing) {
  firstYard();  // writes the tables
  const QString copy = file("copy.outyard");
  ASSERT_EQ(outyard({QStringLiteral("new"), copy}).code, 0);
  const Ran in = outyard({QStringLiteral("import"), copy, QStringLiteral("--csv"), file("tables")});
  ASSERT_EQ(in.code, 0) << in.err.left(2000).toStdString();
  ASSERT_EQ(outyard({QStringLiteral("export"), copy, QStringLiteral("--csv"), file("again")}).code,
            0);
  const auto names = QDir(file("tables")).entryList({QStringLiteral("*.csv")});
  EXPECT_GE(names.size(), 20);
  for (const QString& name : names) {
    EXPECT_EQ(hashOf(file("tables/") + name), hashOf(file("again/") + name)) << name.toStdString();
  }
}

TEST_F(CommandLine, PlansAndPrintsTheFirstYard) {
  const QString yard = firstYard();
  const Ran table = outyard({QStringLiteral("boost"), *s_sample, QStringLiteral("--yard"), yard});
  ASSERT_EQ(table.code, 0) << table.err.toStdString();
  EXPECT_TRUE(
      table.out.startsWith("colony,hive,verdict,method,donor_colony,donor_hive,bees_moved,"
                           "frames_moved,gain,gain_low,gain_high,donor_cost,why\n"));
  EXPECT_TRUE(table.out.contains(",stack,")) << table.out.toStdString();

  const Ran json = outyard({QStringLiteral("boost"), *s_sample, QStringLiteral("--yard"), yard,
                            QStringLiteral("--json")});
  ASSERT_EQ(json.code, 0);
  const QJsonObject o = QJsonDocument::fromJson(json.out).object();
  for (const char* name :
       {"format", "unit", "status", "bound", "gap", "pins", "forbids", "yards", "date", "target",
        "objective", "options", "limits", "rules", "chosen", "barred"}) {
    EXPECT_TRUE(o.contains(QLatin1String(name))) << name;
  }

  const QString pdf = file("yard.pdf");
  const Ran sheet =
      outyard({QStringLiteral("sheet"), *s_sample, QStringLiteral("--yard"), yard,
               QStringLiteral("--out"), pdf, QStringLiteral("--paper"), QStringLiteral("letter")});
  ASSERT_EQ(sheet.code, 0) << sheet.err.toStdString();
  QFile f(pdf);
  ASSERT_TRUE(f.open(QIODevice::ReadOnly));
  EXPECT_TRUE(f.read(5) == "%PDF-");
  EXPECT_GT(f.size(), 20000);
}

TEST_F(CommandLine, SheetsOfSeveralYardsMakeOnePrint) {
  const QString season = file("several.outyard");
  ASSERT_EQ(outyard({QStringLiteral("new"), season, QStringLiteral("--sample")}).code, 0);
  const Ran r = outyard({QStringLiteral("sheet"), season, QStringLiteral("--yard"),
                         QStringLiteral("TR"), QStringLiteral("--yard"), QStringLiteral("AB"),
                         QStringLiteral("--large"), QStringLiteral("--out"), file("two.pdf")});
  ASSERT_EQ(r.code, 0) << r.err.toStdString();
  // Each yard has a number of its own, and both are kept: the next print goes on from there.
  EXPECT_TRUE(r.err.contains("26-0001, 26-0002")) << r.err.toStdString();
  const Ran next = outyard({QStringLiteral("sheet"), season, QStringLiteral("--yard"),
                            QStringLiteral("TR"), QStringLiteral("--out"), file("one.pdf")});
  EXPECT_TRUE(next.err.contains("26-0003")) << next.err.toStdString();
  EXPECT_EQ(
      outyard({QStringLiteral("sheet"), season, QStringLiteral("--all"), QStringLiteral("--yard"),
               QStringLiteral("TR"), QStringLiteral("--out"), file("x.pdf")})
          .code,
      2);
}

TEST_F(CommandLine, TheSampleIsSound) {
  const Ran r = outyard({QStringLiteral("check"), *s_sample});
  EXPECT_EQ(r.code, 0) << r.out.toStdString();
  EXPECT_EQ(lines(r.out).size(), 1);
}

}  // namespace
