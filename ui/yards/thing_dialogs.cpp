// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/yards/thing_dialogs.h"

#include <QComboBox>
#include <QDir>
#include <QDoubleSpinBox>
#include <QFile>
#include <QFileInfo>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QImageReader>
#include <QLineEdit>
#include <QPushButton>
#include <algorithm>
#include <cmath>

#include "ui/widgets/hive_facts.h"

namespace outyard::yards {
namespace {

using apiary::FeatureKind;

constexpr double kMostM = 500;
/// How far the other end of a new fence or picture lies from the first.
constexpr double kNewLengthM = 5;
/// Two ends nearer than this are no line and no area.
constexpr double kLeastLengthM = 0.1;

QString qs(const std::string& text) {
  return QString::fromStdString(text);
}

QString kindText(FeatureKind kind) {
  return widgets::codeText("feature", apiary::code(kind));
}

apiary::Feature newFeature(const apiary::Season& season, base::YardId yard, QPointF placeM) {
  apiary::Feature feature;
  int number = 1;
  const auto name = [&] { return yard.str() + "-F" + std::to_string(number); };
  while (season.find<apiary::Feature>(name())) ++number;
  feature.feature = name();
  feature.yard = std::move(yard);
  feature.xM = placeM.x();
  feature.yM = placeM.y();
  return feature;
}

bool sameContents(const QString& a, const QString& b) {
  QFile first(a), second(b);
  return first.open(QIODevice::ReadOnly) && second.open(QIODevice::ReadOnly) &&
         first.readAll() == second.readAll();
}

}  // namespace

QString picturesFolder(const widgets::SeasonHub& hub) {
  return hub.path().isEmpty() ? QString()
                              : QFileInfo(hub.path()).absolutePath() + QStringLiteral("/pictures");
}

// --- a feature ----------------------------------------------------------------------------------

FeatureDialog::FeatureDialog(widgets::SeasonHub& hub, base::YardId yard, QPointF placeM,
                             QWidget* parent)
    : FeatureDialog(hub, newFeature(hub.season(), std::move(yard), placeM), true, parent) {}

FeatureDialog::FeatureDialog(widgets::SeasonHub& hub, const apiary::Feature& feature,
                             QWidget* parent)
    : FeatureDialog(hub, feature, false, parent) {}

FeatureDialog::FeatureDialog(widgets::SeasonHub& hub, apiary::Feature feature, bool isNew,
                             QWidget* parent)
    : NewDialog(hub, isNew ? tr("Add feature") : tr("Change feature"), parent),
      m_feature(std::move(feature)),
      m_new(isNew),
      m_kind(new QComboBox),
      m_x(lengthField("featureX", m_feature.xM, -kMostM, kMostM)),
      m_y(lengthField("featureY", m_feature.yM, -kMostM, kMostM)),
      m_x2(lengthField("featureX2", m_feature.x2M.value_or(m_feature.xM + kNewLengthM), -kMostM,
                       kMostM)),
      m_y2(lengthField("featureY2", m_feature.y2M.value_or(m_feature.yM + kNewLengthM), -kMostM,
                       kMostM)),
      m_notes(textField("featureNotes")),
      m_file(textField("featureFile")),
      m_choose(new QPushButton(tr("Choose &file…"))),
      m_fileRow(new QWidget),
      m_form(new QFormLayout) {
  m_kind->setObjectName(QStringLiteral("featureKind"));
  for (const auto each : {FeatureKind::Gate, FeatureKind::Truck, FeatureKind::Water,
                          FeatureKind::Fence, FeatureKind::Picture}) {
    m_kind->addItem(kindText(each), static_cast<int>(each));
  }
  m_kind->setCurrentIndex(m_kind->findData(static_cast<int>(m_feature.kind)));
  m_kind->setEnabled(m_new);
  m_notes->setText(qs(m_feature.notes));
  m_file->setText(qs(m_feature.file));
  m_file->setReadOnly(true);
  m_choose->setObjectName(QStringLiteral("featureChoose"));
  m_choose->setAutoDefault(false);
  auto* row = new QHBoxLayout(m_fileRow);
  row->setContentsMargins(0, 0, 0, 0);
  row->addWidget(m_file, 1);
  row->addWidget(m_choose);
  m_form->addRow(tr("&Kind"), m_kind);
  m_form->addRow(tr("From the &west edge"), m_x);
  m_form->addRow(tr("From the &south edge"), m_y);
  m_form->addRow(tr("Other end, from the w&est edge"), m_x2);
  m_form->addRow(tr("Other end, from the s&outh edge"), m_y2);
  m_form->addRow(tr("Picture"), m_fileRow);
  m_form->addRow(tr("&Notes"), m_notes);
  showKind();
  connect(m_kind, &QComboBox::currentIndexChanged, this, [this] { showKind(); });
  connect(m_choose, &QPushButton::clicked, this, [this] { chooseFile(); });
  finish(m_form, tr("The ends of a picture are two opposite corners; “Scale the picture by two "
                    "points” sets them by a known distance. It is kept in the folder “pictures” "
                    "beside the season file."));
}

FeatureKind FeatureDialog::kind() const {
  return static_cast<FeatureKind>(m_kind->currentData().toInt());
}

bool FeatureDialog::hasTwoEnds() const {
  return kind() == FeatureKind::Fence || kind() == FeatureKind::Picture;
}

void FeatureDialog::showKind() {
  m_form->setRowVisible(m_x2, hasTwoEnds());
  m_form->setRowVisible(m_y2, hasTwoEnds());
  m_form->setRowVisible(m_fileRow, kind() == FeatureKind::Picture);
}

void FeatureDialog::chooseFile() {
  const QString chosen = m_hub.dialogs().openFile(
      this, tr("Picture of the ground"), tr("Pictures (*.png *.jpg *.jpeg *.bmp);;All files (*)"));
  if (chosen.isEmpty()) return;
  const QFileInfo info(chosen);
  const QDir folder(picturesFolder(m_hub));
  if (info.absolutePath() == folder.absolutePath()) {
    m_source.clear();
    m_file->setText(info.fileName());
  } else {
    m_source = info.absoluteFilePath();
    // Another picture of that name may be there already, of another yard perhaps.
    QString name = info.fileName();
    for (int number = 2; folder.exists(name) && !sameContents(folder.filePath(name), m_source);
         ++number) {
      name = QStringLiteral("%1-%2.%3").arg(info.completeBaseName()).arg(number).arg(info.suffix());
    }
    m_file->setText(name);
  }
  // Its own proportions over the width that is given.
  const QSize size = QImageReader(info.absoluteFilePath()).size();
  if (size.width() > 0 && size.height() > 0) {
    m_y2->setValue(m_y->value() + std::abs(m_x2->value() - m_x->value()) * size.height() /
                                      static_cast<double>(size.width()));
  }
  refresh();
}

QString FeatureDialog::whyNotYet() const {
  if (hasTwoEnds()) {
    const double wide = std::abs(metres(*m_x2) - metres(*m_x));
    const double deep = std::abs(metres(*m_y2) - metres(*m_y));
    if (kind() == FeatureKind::Fence && wide < kLeastLengthM && deep < kLeastLengthM) {
      return tr("Both ends of the fence are the same place: say where its other end is.");
    }
    if (kind() == FeatureKind::Picture && (wide < kLeastLengthM || deep < kLeastLengthM)) {
      return tr("The corners of the picture span no ground: say where its other corner is.");
    }
  }
  if (kind() != FeatureKind::Picture) return {};
  if (picturesFolder(m_hub).isEmpty()) return tr("Save the season to a file first.");
  if (m_file->text().isEmpty()) return tr("Choose the file of the picture.");
  const QString file =
      m_source.isEmpty() ? picturesFolder(m_hub) + u'/' + m_file->text() : m_source;
  if (!QImageReader(file).canRead()) {
    return tr("%1 cannot be read as a picture. Choose a PNG or JPEG file.")
        .arg(QFileInfo(file).fileName());
  }
  return {};
}

QString FeatureDialog::bringPicture() const {
  if (kind() != FeatureKind::Picture || m_source.isEmpty()) return {};
  const QString folder = picturesFolder(m_hub), target = folder + u'/' + m_file->text();
  if (QFileInfo::exists(target)) return {};  // the same picture: the name was made so
  if (QDir().mkpath(folder) && QFile::copy(m_source, target)) return {};
  return tr("%1 could not be copied to %2. Look whether that folder may be written to.")
      .arg(QFileInfo(m_source).fileName(), QDir::toNativeSeparators(folder));
}

session::CommandPtr FeatureDialog::command() const {
  apiary::Feature feature = m_feature;
  feature.kind = kind();
  feature.xM = metresOr(*m_x, m_feature.xM);
  feature.yM = metresOr(*m_y, m_feature.yM);
  feature.x2M.reset();
  feature.y2M.reset();
  if (hasTwoEnds()) {
    feature.x2M = m_feature.x2M ? metresOr(*m_x2, *m_feature.x2M) : metres(*m_x2);
    feature.y2M = m_feature.y2M ? metresOr(*m_y2, *m_feature.y2M) : metres(*m_y2);
  }
  feature.file = kind() == FeatureKind::Picture ? m_file->text().toStdString() : std::string();
  feature.notes = m_notes->text().trimmed().toStdString();
  return m_new ? session::addFeature(feature) : session::editFeature(feature);
}

// --- which one ----------------------------------------------------------------------------------

std::vector<Thing> thingsOf(const apiary::Season& season, const base::YardId& yard) {
  std::vector<Thing> things;
  for (const auto& [key, stand] : season.table<apiary::Stand>()) {
    if (stand.yard == yard) things.emplace_back(stand);
  }
  for (const auto& [key, feature] : season.table<apiary::Feature>()) {
    if (feature.yard == yard) things.emplace_back(feature);
  }
  return things;
}

QString thingText(const Thing& thing) {
  if (const auto* stand = std::get_if<apiary::Stand>(&thing)) {
    return ThingDialog::tr("stand %1").arg(qs(stand->stand));
  }
  const auto& feature = std::get<apiary::Feature>(thing);
  const QString note = qs(feature.notes.empty() ? feature.feature : feature.notes);
  return QStringLiteral("%1 (%2)").arg(kindText(feature.kind), note);
}

ThingId idOf(const Thing& thing) {
  return std::visit(
      [&thing](const auto& row) {
        return ThingId{std::holds_alternative<apiary::Stand>(thing),
                       apiary::rowKey(apiary::toRow(row))};
      },
      thing);
}

std::optional<Thing> findThing(const apiary::Season& season, const ThingId& id) {
  if (id.isStand) {
    const auto* stand = season.find<apiary::Stand>(id.key);
    return stand ? std::optional<Thing>(*stand) : std::nullopt;
  }
  const auto* feature = season.find<apiary::Feature>(id.key);
  return feature ? std::optional<Thing>(*feature) : std::nullopt;
}

session::CommandPtr shifted(const Thing& thing, QPointF byM, double turnDeg) {
  constexpr double kFullTurn = 360;
  if (const auto* row = std::get_if<apiary::Stand>(&thing)) {
    apiary::Stand stand = *row;
    stand.xM += byM.x();
    stand.yM += byM.y();
    if (turnDeg != 0) {
      const double angle = std::fmod(stand.angleDeg.value_or(0) + turnDeg, kFullTurn);
      stand.angleDeg = angle < 0 ? angle + kFullTurn : angle;
    }
    return session::arrangeStand(stand);
  }
  if (byM.isNull()) return nullptr;
  apiary::Feature feature = std::get<apiary::Feature>(thing);
  feature.xM += byM.x();
  feature.yM += byM.y();
  if (feature.x2M) *feature.x2M += byM.x();
  if (feature.y2M) *feature.y2M += byM.y();
  return session::editFeature(feature);
}

session::CommandPtr removal(const Thing& thing) {
  if (const auto* stand = std::get_if<apiary::Stand>(&thing)) {
    return session::removeStand(stand->yard, stand->stand);
  }
  return session::removeFeature(std::get<apiary::Feature>(thing).feature);
}

ThingDialog::ThingDialog(widgets::SeasonHub& hub, const base::YardId& yard, For purpose,
                         const std::optional<Thing>& first, QWidget* parent)
    : NewDialog(
          hub,
          purpose == For::Change ? tr("Change stand or feature") : tr("Remove stand or feature"),
          parent),
      m_for(purpose),
      m_things(thingsOf(hub.season(), yard)),
      m_which(new QComboBox) {
  m_which->setObjectName(QStringLiteral("thingWhich"));
  for (const auto& each : m_things) m_which->addItem(thingText(each));
  const auto at = first ? std::find(m_things.begin(), m_things.end(), *first) : m_things.end();
  if (at != m_things.end()) m_which->setCurrentIndex(static_cast<int>(at - m_things.begin()));
  auto* form = new QFormLayout;
  form->addRow(tr("&Which"), m_which);
  finish(form, purpose == For::Remove ? tr("A picture's file stays in its folder.") : QString());
}

Thing ThingDialog::thing() const {
  return m_things.at(static_cast<std::size_t>(m_which->currentIndex()));
}

session::CommandPtr ThingDialog::command() const {
  const Thing chosen = thing();
  if (m_for == For::Remove) return removal(chosen);
  if (const auto* stand = std::get_if<apiary::Stand>(&chosen)) return session::editStand(*stand);
  return session::editFeature(std::get<apiary::Feature>(chosen));
}

}  // namespace outyard::yards
