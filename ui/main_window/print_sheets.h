// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <functional>
#include <vector>

#include "core/base/date.h"
#include "core/base/ids.h"
#include "core/sheet/yard_sheet.h"
#include "ui/widgets/session_model.h"

class QCheckBox;
class QComboBox;
class QDateEdit;
class QLabel;
class QLineEdit;
class QListWidget;
class QPrinter;
class QPushButton;
class QScrollArea;

namespace outyard::main_window {

/// What is to be printed: a sheet for each yard, for one day.
struct SheetAsk {
  std::vector<base::YardId> yards;
  base::Date date;
  bool letterPaper = false;
  bool largeType = false;
};

/// Which yards, which day, which paper.
class PrintSheetsDialog : public QDialog {
  Q_OBJECT
 public:
  explicit PrintSheetsDialog(widgets::SeasonHub& hub, QWidget* parent = nullptr);
  /// The ticked yards in the order of the list.
  [[nodiscard]] SheetAsk ask() const;
  /// Ticks these yards alone and takes this day.
  void choose(const std::vector<base::YardId>& yards, base::Date day);

 private:
  QListWidget* m_yards;
  QComboBox* m_paper;
  QDateEdit* m_date;
  QCheckBox* m_large;
  QPushButton* m_ok;
};

/// The pages as they will come out: a strip of small pages, one large, a choice of pages; to a PDF
/// or a printer. What is printed is what is seen: one painter draws both.
class SheetPreview : public QDialog {
  Q_OBJECT
 public:
  /// `written` is called once, when the first page has gone to a file or printer; the preview says
  /// what it answers if it is no success.
  SheetPreview(const sheet::SheetDocument& document, const QString& fileName,
               widgets::Dialogs& dialogs, std::function<base::Result<void>()> written,
               QWidget* parent = nullptr);
  ~SheetPreview() override;
  [[nodiscard]] bool wasWritten() const { return m_kept; }

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void showPage(int row);
  void savePdf();
  void print();
  void zoomBy(double factor);
  /// The chosen pages; nothing, with a word why, when the choice is none.
  [[nodiscard]] std::optional<sheet::SheetDocument> chosen();
  void keep();
  void refresh();

  const sheet::SheetDocument m_document;
  QString m_fileName;
  widgets::Dialogs& m_dialogs;
  std::function<base::Result<void>()> m_written;
  bool m_kept = false;
  double m_zoom = 1;
  QListWidget* m_strip;
  QScrollArea* m_area;
  QLabel *m_page, *m_say;
  QLineEdit* m_range;
  QPushButton *m_save, *m_print;
};

}  // namespace outyard::main_window
