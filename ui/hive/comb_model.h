// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QAbstractTableModel>
#include <array>
#include <optional>
#include <vector>

#include "core/apiary/state.h"
#include "core/sheet/shape.h"

namespace outyard::hive {

/// One thing that a comb's face can hold, with the key that fills it in.
struct Content {
  std::optional<double> apiary::CombSide::*share;
  const char* name;    ///< untranslated, context "CombContents"
  const char* column;  ///< short heading, untranslated
  char16_t key;        ///< letter that fills an eighth with it
  sheet::Ink ink;
  sheet::Hatch hatch;
};
inline constexpr int kContentCount = 9;
/// From the top bar downwards: food above, brood below.
const std::array<Content, kContentCount>& combContents();
QString contentName(const Content& content);

inline constexpr int kEighths = 8;
/// What stands in each eighth of a face (index into combContents), 4 wide and 2 high, row by row.
using Eighths = std::array<std::optional<int>, kEighths>;

/// The comb sides of one colony's boxes as they are typed: one row a side. A row with nothing
/// typed is not recorded; it is never taken as empty.
class CombModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column {
    kBox,
    kSlot,
    kSide,
    kBees,
    kFirstContent,
    kMould = kFirstContent + kContentCount,
    kSum,
    kColumnCount
  };

  explicit CombModel(QObject* parent = nullptr) : QAbstractTableModel(parent) {}
  /// A row for each side of each frame; boxes of which the frames were not counted get ten.
  void setBoxes(const std::vector<apiary::BoxState>& boxes);
  /// Puts recorded sides in place (a correction); sides of boxes not there are added.
  void setSides(const std::vector<apiary::CombSide>& sides);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation,
                                    int role) const override;
  [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;

  /// The sides on which something was typed, with hive, colony and date still to be set.
  [[nodiscard]] std::vector<apiary::CombSide> typedSides() const;
  [[nodiscard]] bool anyTyped() const;
  /// First sentence about a row that does not add up or cannot be read; empty when all stand.
  [[nodiscard]] QString firstFault() const;
  [[nodiscard]] int firstFaultRow() const;

  [[nodiscard]] const apiary::CombSide& side(int row) const;
  [[nodiscard]] const Eighths& eighths(int row) const;
  /// Sets one eighth; the shares follow. nullopt = nothing said about that eighth.
  void setEighth(int row, int eighth, std::optional<int> content);
  /// The whole face holds this.
  void fillSide(int row, int content);
  /// The same as this row on every side of its box on which nothing was typed; their number.
  int fillBox(int row);
  /// Side a of the row's comb onto its side b.
  void copyToOtherSide(int row);
  /// What the side before holds onto this one too; false for the first side.
  bool copyFromBefore(int row);
  void clearSide(int row);

 Q_SIGNALS:
  /// Any share changed.
  void edited();

 private:
  struct Line {
    apiary::CombSide side;
    Eighths eighths;
    std::array<QString, kColumnCount> bad;  ///< text that could not be read, by column
    std::array<QString, kColumnCount> why;
  };
  [[nodiscard]] static bool typed(const Line& line);
  [[nodiscard]] static double sum(const Line& line);
  [[nodiscard]] static QString sumFault(const Line& line);
  void laid(Line& line);     ///< eighths from shares
  void counted(Line& line);  ///< shares from eighths
  void touched(int row);

  std::vector<Line> m_lines;
};

}  // namespace outyard::hive
