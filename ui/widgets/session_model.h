// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QObject>
#include <QString>
#include <map>
#include <memory>
#include <optional>
#include <vector>

#include "core/apiary/state.h"
#include "core/base/clock.h"
#include "core/session/session.h"
#include "core/strength/verdict.h"
#include "ui/adapt/settings.h"
#include "ui/widgets/dialogs.h"

class QWidget;

namespace outyard::widgets {

class ForecastDesk;

/// What the person has chosen; all places show the same.
struct Selection {
  std::optional<base::YardId> yard;
  std::optional<base::HiveId> hive;
  std::optional<base::ColonyId> colony;
  bool operator==(const Selection&) const = default;
};

/// The open season as the window sees it: one session, one selection, one shown day, and results
/// worked out from them, kept until the season changes. All places share it.
class SeasonHub : public QObject {
  Q_OBJECT
 public:
  SeasonHub(Dialogs& dialogs, adapt::DeskSettings& settings, const base::Clock& clock,
            QObject* parent = nullptr);
  ~SeasonHub() override;

  /// Takes over a season; the one before is let go.
  void open(std::unique_ptr<session::Session> session, const QString& path);
  void close();
  [[nodiscard]] bool isOpen() const { return m_session != nullptr; }
  [[nodiscard]] const QString& path() const { return m_path; }
  /// An empty season while none is open.
  [[nodiscard]] const apiary::Season& season() const;
  /// Null while none is open.
  [[nodiscard]] session::Session* session() const { return m_session.get(); }

  [[nodiscard]] base::Date workingDate() const;
  /// The day that map, marks and tables show (the date slider); the working date unless chosen.
  [[nodiscard]] base::Date shownDate() const;
  void setShownDate(base::Date day);
  [[nodiscard]] bool showsToday() const { return shownDate() == workingDate(); }
  /// First day of any record of a hive or place, else the working date.
  [[nodiscard]] base::Date firstDate() const;

  /// Why the command cannot be done now, in sentences; empty when it can.
  [[nodiscard]] QString whyNot(const session::Command& command) const;
  /// Does it; on failure the sentences are shown, nothing has changed, and the answer is false.
  bool execute(session::CommandPtr command, QWidget* parent = nullptr);
  bool undo(QWidget* parent = nullptr);
  bool redo(QWidget* parent = nullptr);

  [[nodiscard]] const Selection& selection() const { return m_selection; }
  /// A hive without a yard takes the yard where it stands on the shown day; a hive without a
  /// colony its main colony.
  void select(Selection selection);
  void selectYard(const base::YardId& yard) { select({yard, std::nullopt, std::nullopt}); }
  void selectHive(const base::HiveId& hive) { select({std::nullopt, hive, std::nullopt}); }

  /// Hives of a yard on the shown day; good until the season or the shown day changes.
  [[nodiscard]] const std::vector<apiary::HiveState>& hives(const base::YardId& yard) const;
  /// Null when the hive does not stand in any yard on the shown day.
  [[nodiscard]] const apiary::HiveState* hive(const base::HiveId& hive) const;
  /// Judgements of a yard on the shown day; good until the season or the shown day changes.
  [[nodiscard]] const std::vector<strength::Judgement>& judgements(const base::YardId& yard) const;
  /// Those of the colonies in one hive, the main one first.
  [[nodiscard]] std::vector<strength::Judgement> judgementsOf(const base::HiveId& hive) const;

  /// The forecasts of the open season, worked out beside the window.
  [[nodiscard]] ForecastDesk& forecasts() const { return *m_forecasts; }
  /// True when the shown day lies after the working date: what is expected, not what was seen.
  [[nodiscard]] bool showsFuture() const { return shownDate() > workingDate(); }

  [[nodiscard]] Dialogs& dialogs() const { return m_dialogs; }
  [[nodiscard]] adapt::DeskSettings& settings() const { return m_settings; }
  [[nodiscard]] const base::Clock& clock() const { return m_clock; }

 Q_SIGNALS:
  /// After a command, an undo or a redo; not sent when another season is opened.
  void changed(const outyard::session::Notice& notice);
  void seasonReplaced();
  void selectionChanged();
  void shownDateChanged();

 private:
  void forget() const;
  void forgetTouched(const session::Notice& notice) const;

  Dialogs& m_dialogs;
  adapt::DeskSettings& m_settings;
  const base::Clock& m_clock;
  std::unique_ptr<session::Session> m_session;
  std::shared_ptr<void> m_subscription;
  std::unique_ptr<ForecastDesk> m_forecasts;
  QString m_path;
  Selection m_selection;
  std::optional<base::Date> m_shown;
  mutable std::map<base::YardId, std::vector<apiary::HiveState>> m_hives;
  mutable std::map<base::YardId, std::vector<strength::Judgement>> m_judgements;
};

}  // namespace outyard::widgets
