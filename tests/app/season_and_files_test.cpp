// SPDX-License-Identifier: GPL-3.0-or-later
// The verbs season, import --weather and export --ics, --geojson, run as a user would.
#include <gtest/gtest.h>

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QTemporaryDir>

#include "core/base/date.h"

namespace {

struct Ran {
  int code = -1;
  QByteArray out, err;
};

Ran runProgram(const QStringList& arguments) {
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

QString text(const char* s) {
  return QString::fromUtf8(s);
}

class SeasonFiles : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    s_folder = new QTemporaryDir;
    const Ran made = runProgram({text("new"), sample(), text("--sample")});
    ASSERT_EQ(made.code, 0) << made.err.toStdString();
  }
  static void TearDownTestSuite() { delete s_folder; }
  static QString file(const char* name) { return s_folder->filePath(QString::fromUtf8(name)); }
  static QString sample() { return file("s.outyard"); }
  static QByteArray read(const char* name) {
    QFile f(file(name));
    EXPECT_TRUE(f.open(QIODevice::ReadOnly)) << name;
    return f.readAll();
  }
  static void write(const char* name, const QByteArray& bytes) {
    QFile f(file(name));
    ASSERT_TRUE(f.open(QIODevice::WriteOnly));
    f.write(bytes);
  }
  static inline QTemporaryDir* s_folder = nullptr;
};

TEST_F(SeasonFiles, SeasonListsWhatFallsDue) {
  const Ran r = runProgram({text("season"), sample(), text("--to"), text("2026-05-23")});
  ASSERT_EQ(r.code, 0) << r.err.toStdString();
  const auto lines = r.out.split('\n');
  EXPECT_EQ(lines.first(), "date,yard,hive,colony,task,earliest,latest,chance,why");
  EXPECT_GT(lines.size(), 30);
  const Ran again = runProgram({text("season"), sample(), text("--to"), text("2026-05-23")});
  EXPECT_EQ(r.out, again.out);
  const Ran json =
      runProgram({text("season"), sample(), text("--from"), text("2026-04-25"), text("--to"),
                  text("2026-05-10"), text("--yard"), text("TR"), text("--json")});
  ASSERT_EQ(json.code, 0);
  const auto rows = QJsonDocument::fromJson(json.out).array();
  ASSERT_GT(rows.size(), 3);
  for (const auto& row : rows) {
    const auto o = row.toObject();
    EXPECT_EQ(o[QStringLiteral("yard")].toString(), text("TR"));
    const auto day = [&](const char* name) {
      return outyard::base::Date::parse(o[QString::fromUtf8(name)].toString().toStdString());
    };
    ASSERT_TRUE(day("date") && day("earliest") && day("latest"));
    EXPECT_LE(*day("earliest"), *day("latest"));
    EXPECT_GE(o[QStringLiteral("chance")].toDouble(), 0);
    EXPECT_LE(o[QStringLiteral("chance")].toDouble(), 1);
    EXPECT_FALSE(o[QStringLiteral("why")].toString().isEmpty());
    EXPECT_FALSE(o[QStringLiteral("why")].toString().contains(text("planning."))) << "no words";
  }
  EXPECT_EQ(runProgram({text("season"), sample()}).code, 2);
  EXPECT_EQ(runProgram({text("season"), sample(), text("--to"), text("2026-01-01")}).code, 2);
  EXPECT_EQ(runProgram({text("season"), sample(), text("--to"), text("2026-05-10"), text("--yard"),
                        text("ZZ")})
                .code,
            1);
}

TEST_F(SeasonFiles, WeatherComesInWholeOrNotAtAll) {
  write("w.csv",
        "STATION,DATE,PRCP,TMAX,TMIN\nA,2026-04-20,0.5,17.8,-0.6\nA,2026-04-21,0.0,12.1,1.0\n");
  const QStringList call{text("import"), sample(),       text("--weather"),
                         file("w.csv"),  text("--yard"), text("TR")};
  const Ran r = runProgram(call);
  EXPECT_EQ(r.code, 0) << r.err.toStdString();
  EXPECT_TRUE(r.err.contains("weather: ")) << r.err.toStdString();
  write("bad.csv",
        "STATION,DATE,PRCP,TMAX,TMIN\nA,2026-04-22,0.5,17.8,-0.6\nA,2026-04-23,0.0,2.1,21.0\n");
  const Ran bad = runProgram(
      {text("import"), sample(), text("--weather"), file("bad.csv"), text("--yard"), text("TR")});
  EXPECT_EQ(bad.code, 1);
  EXPECT_TRUE(bad.err.startsWith("bad.csv:3: TMIN: ")) << bad.err.toStdString();
  EXPECT_EQ(runProgram({text("import"), sample(), text("--weather"), file("w.csv")}).code, 2);
  EXPECT_EQ(runProgram(call + QStringList{text("--units"), text("furlongs")}).code, 2);
  EXPECT_EQ(runProgram({text("import"), sample(), text("--weather"), file("none.csv"),
                        text("--yard"), text("TR")})
                .code,
            1);
}

TEST_F(SeasonFiles, CalendarAndMapFile) {
  const Ran r = runProgram({text("export"), sample(), text("--ics"), file("s.ics"),
                            text("--geojson"), file("s.geojson")});
  ASSERT_EQ(r.code, 0) << r.err.toStdString();
  const QByteArray ics = read("s.ics");
  EXPECT_TRUE(ics.startsWith("BEGIN:VCALENDAR\r\n"));
  EXPECT_GT(ics.count("BEGIN:VEVENT"), 4);
  EXPECT_FALSE(ics.contains("planning.") || ics.contains("exchange.")) << "no words";
  const auto map = QJsonDocument::fromJson(read("s.geojson")).object();
  EXPECT_EQ(map[QStringLiteral("type")].toString(), text("FeatureCollection"));
  const auto features = map[QStringLiteral("features")].toArray();
  EXPECT_GT(features.size(), 100);
  for (const auto& f : features) {
    const auto geometry = f.toObject()[QStringLiteral("geometry")].toObject();
    const auto at = geometry[QStringLiteral("coordinates")].toArray();
    ASSERT_EQ(at.size(), 2);
    EXPECT_NEAR(at[0].toDouble(), -97.6, 0.3);
    EXPECT_NEAR(at[1].toDouble(), 45.1, 0.3);
  }
  EXPECT_EQ(runProgram({text("export"), sample()}).code, 2);
  EXPECT_EQ(runProgram({text("export"), sample(), text("--ics"), text("/nowhere/at/all.ics")}).code,
            1);
}

}  // namespace
