// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtGlobal>
#include <array>

#include "ui/adapt/catalogue.h"

// Texts of the visits (core/session/commands_visits).
namespace outyard::adapt {
namespace {

constexpr std::array kWords{
    CatalogueEntry{"session.title.add_visit", QT_TRANSLATE_NOOP("Messages", "visit to %1 on %2")},
    CatalogueEntry{"session.title.accept_rounds",
                   QT_TRANSLATE_NOOP("Messages", "plan %1 visits, %2 pieces of work")},
    CatalogueEntry{"session.title.move_visit", QT_TRANSLATE_NOOP("Messages", "move a visit to %1")},
    CatalogueEntry{"session.title.move_visits",
                   QT_TRANSLATE_NOOP("Messages", "move %1 visits to %2")},
    CatalogueEntry{"session.title.edit_visit",
                   QT_TRANSLATE_NOOP("Messages", "time and notes of a visit")},
    CatalogueEntry{"session.title.remove_visit", QT_TRANSLATE_NOOP("Messages", "remove a visit")},
    CatalogueEntry{"session.title.remove_visits",
                   QT_TRANSLATE_NOOP("Messages", "remove %1 visits")},
    CatalogueEntry{"session.title.put_into_visit",
                   QT_TRANSLATE_NOOP("Messages", "put a piece of work into a visit")},
    CatalogueEntry{"session.title.put_several_into_visit",
                   QT_TRANSLATE_NOOP("Messages", "put %1 pieces of work into a visit")},
    CatalogueEntry{"session.title.tasks_done",
                   QT_TRANSLATE_NOOP("Messages", "%1 pieces of work done")},
    CatalogueEntry{"session.title.tasks_dropped",
                   QT_TRANSLATE_NOOP("Messages", "drop %1 pieces of planned work")},
    CatalogueEntry{"session.title.move_task",
                   QT_TRANSLATE_NOOP("Messages", "put a piece of work off to %1")},
    CatalogueEntry{"session.title.move_tasks",
                   QT_TRANSLATE_NOOP("Messages", "put %1 pieces of work off to %2")},
    CatalogueEntry{"session.title.take_out_of_visit",
                   QT_TRANSLATE_NOOP("Messages", "take a piece of work out of its visit")},
    CatalogueEntry{"session.title.take_several_out_of_visit",
                   QT_TRANSLATE_NOOP("Messages", "take %1 pieces of work out of their visit")},
    CatalogueEntry{
        "session.visit_exists",
        QT_TRANSLATE_NOOP("Messages",
                          "There is already a visit %1; leave the name out and one is made")},
    CatalogueEntry{"session.visit_that_day",
                   QT_TRANSLATE_NOOP("Messages",
                                     "A visit to %1 on %2 is planned already: put the work into "
                                     "that one, or take another day")},
    CatalogueEntry{"session.visit_was_made",
                   QT_TRANSLATE_NOOP("Messages",
                                     "Work was done at the visit to %1 on %2, so it stays on its "
                                     "day. Make a new visit for what is left")},
    CatalogueEntry{
        "session.visit_changed",
        QT_TRANSLATE_NOOP(
            "Messages",
            "The visit to %1 on %2 was moved meanwhile: let the rounds be proposed again")},
    CatalogueEntry{"session.task_of_other_yard",
                   QT_TRANSLATE_NOOP(
                       "Messages",
                       "The work at %1 is to be done in %2, not in %3: put it into a visit there")},
    CatalogueEntry{
        "session.task_without_yard",
        QT_TRANSLATE_NOOP(
            "Messages",
            "The work at %1 has no yard: place its hive first, or name the yard of the task")},
    CatalogueEntry{"session.task_in_no_visit",
                   QT_TRANSLATE_NOOP("Messages", "The work at %1 belongs to no visit")},
    CatalogueEntry{
        "session.task_twice",
        QT_TRANSLATE_NOOP("Messages", "Task %1 is in two visits of the round: leave it in one")},
};

}  // namespace

std::span<const CatalogueEntry> visitWords() {
  return kWords;
}

}  // namespace outyard::adapt
