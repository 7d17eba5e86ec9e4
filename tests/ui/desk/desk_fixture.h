// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <gtest/gtest.h>

#include <QAction>
#include <QCoreApplication>
#include <QTest>
#include <optional>
#include <vector>

#include "tests/ui/support/desk.h"
#include "ui/desk/desk_list.h"
#include "ui/desk/desk_place.h"

/// The desk on the sample season, worked out, for its tests.
namespace outyard::desk {

using tests::day;
using tests::Desk;
using tests::field;

/// Read once: the import is the slow part.
inline const apiary::Season& sample() {
  static const apiary::Season season = tests::sampleSeason();
  return season;
}

class DeskPlaceTest : public testing::Test {
 protected:
  explicit DeskPlaceTest(apiary::Season season = sample())
      : m_desk(std::move(season)), m_place(m_desk.hub) {
    m_place.resize(1200, 780);
    m_place.show();
    wait();
  }
  void wait() {
    ASSERT_TRUE(QTest::qWaitFor([&] { return !m_place.busy(); }, 60000));
    QCoreApplication::processEvents();
  }
  DeskList& list(const char* name) { return *field<DeskList>(m_place, name); }
  QAction* action(const char* name) {
    for (auto* each : m_place.menuActions()) {
      if (each->objectName() == QLatin1String(name)) return each;
    }
    ADD_FAILURE() << name;
    return nullptr;
  }
  const planning::DueList& due() { return m_place.facts()->due; }

  Desk m_desk;
  DeskPlace m_place;
};

/// Rows of a list with those below them, in order.
inline std::vector<QModelIndex> rowsOf(const DeskList& list) {
  std::vector<QModelIndex> out;
  const auto& model = *list.model();
  for (int i = 0; i < model.rowCount(); ++i) {
    const auto above = model.index(i, 0);
    out.push_back(above);
    for (int k = 0; k < model.rowCount(above); ++k) out.push_back(model.index(k, 0, above));
  }
  return out;
}
/// First row of that kind that answers yes.
template <class F>
QModelIndex rowWhere(const DeskList& list, Row::Kind kind, F is) {
  for (const auto& index : rowsOf(list)) {
    const Row& row = DeskList::rowOf(index);
    if (row.kind == kind && is(row)) return index;
  }
  ADD_FAILURE() << "no such row";
  return {};
}
inline const auto kAny = [](const Row&) { return true; };

}  // namespace outyard::desk
