// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/theme.h"

#include <QApplication>
#include <QFile>
#include <QPainter>
#include <QPixmap>
#include <QStyle>
#include <QStyleFactory>
#include <QStyleHints>
#include <QSvgRenderer>

namespace outyard::widgets {
namespace {

struct Tones {
  QColor window, base, alternate, button, text, faint, line, highlight, highlightText, link;
};

/// Contrast of text on window and base is 7:1 or more in both, of faint text 4.5:1 or more.
QPalette made(const Tones& t) {
  QPalette p;
  p.setColor(QPalette::Window, t.window);
  p.setColor(QPalette::WindowText, t.text);
  p.setColor(QPalette::Base, t.base);
  p.setColor(QPalette::AlternateBase, t.alternate);
  p.setColor(QPalette::ToolTipBase, t.base);
  p.setColor(QPalette::ToolTipText, t.text);
  p.setColor(QPalette::PlaceholderText, t.faint);
  p.setColor(QPalette::Text, t.text);
  p.setColor(QPalette::Button, t.button);
  p.setColor(QPalette::ButtonText, t.text);
  p.setColor(QPalette::BrightText, Qt::white);
  p.setColor(QPalette::Light, t.button.lighter(115));
  p.setColor(QPalette::Midlight, t.button.lighter(106));
  p.setColor(QPalette::Mid, t.line);
  p.setColor(QPalette::Dark, t.line.darker(120));
  p.setColor(QPalette::Shadow, t.text.darker(150));
  p.setColor(QPalette::Highlight, t.highlight);
  p.setColor(QPalette::HighlightedText, t.highlightText);
  p.setColor(QPalette::Link, t.link);
  p.setColor(QPalette::LinkVisited, t.link);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
    p.setColor(QPalette::Disabled, role, t.faint);
  }
  p.setColor(QPalette::Disabled, QPalette::Highlight, t.line);
  p.setColor(QPalette::Disabled, QPalette::HighlightedText, t.text);
  return p;
}

bool desktopIsDark() {
  // The palette that the platform came with, kept before we set our own.
  static const bool dark = isDark(QApplication::palette());
  return dark;
}

}  // namespace

QPalette lightPalette() {
  return made({.window = QColor(0xf6, 0xf5, 0xf1),
               .base = QColor(0xff, 0xff, 0xfd),
               .alternate = QColor(0xf1, 0xf0, 0xea),
               .button = QColor(0xec, 0xea, 0xe3),
               .text = QColor(0x1c, 0x28, 0x2a),
               .faint = QColor(0x5d, 0x69, 0x6b),
               .line = QColor(0xc4, 0xc3, 0xba),
               .highlight = QColor(0x1f, 0x6b, 0x70),
               .highlightText = QColor(0xff, 0xff, 0xff),
               .link = QColor(0x0b, 0x5a, 0x8f)});
}

QPalette darkPalette() {
  return made({.window = QColor(0x23, 0x28, 0x29),
               .base = QColor(0x1a, 0x1e, 0x1f),
               .alternate = QColor(0x21, 0x26, 0x27),
               .button = QColor(0x32, 0x38, 0x39),
               .text = QColor(0xe8, 0xe8, 0xe2),
               .faint = QColor(0x9e, 0xa9, 0xa9),
               .line = QColor(0x4c, 0x54, 0x55),
               .highlight = QColor(0x4f, 0xa9, 0xad),
               .highlightText = QColor(0x0c, 0x16, 0x17),
               .link = QColor(0x7d, 0xc3, 0xf0)});
}

void applyTheme(adapt::Theme theme) {
  const bool dark =
      theme == adapt::Theme::Dark || (theme == adapt::Theme::System && desktopIsDark());
  desktopIsDark();
  if (QApplication::style()->objectName().compare(QLatin1String("fusion"), Qt::CaseInsensitive)) {
    QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
  }
  QApplication::setPalette(dark ? darkPalette() : lightPalette());
}

bool isDark(const QPalette& palette) {
  return palette.color(QPalette::Window).lightness() < 128;
}

const print::Palette& drawingPalette(const QPalette& palette) {
  return print::Palette::forBackground(palette.color(QPalette::Base));
}

QColor inkColour(const QPalette& palette, sheet::Ink ink) {
  return drawingPalette(palette).colour(ink);
}

QIcon ownIcon(const QString& name, const QPalette& palette) {
  QFile file(QStringLiteral(":/icons/%1.svg").arg(name));
  if (!file.open(QIODevice::ReadOnly)) return {};
  const QByteArray drawing = file.readAll();
  const auto drawn = [&](const QColor& colour) {
    QByteArray coloured = drawing;
    coloured.replace("currentColor", colour.name().toLatin1());
    QSvgRenderer renderer(coloured);
    constexpr int kSide = 96;  // scaled down by the icon; sharp up to 4 x 24
    QPixmap pixmap(kSide, kSide);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    renderer.render(&painter);
    return pixmap;
  };
  QIcon icon;
  icon.addPixmap(drawn(palette.color(QPalette::Active, QPalette::WindowText)), QIcon::Normal);
  icon.addPixmap(drawn(palette.color(QPalette::Disabled, QPalette::WindowText)), QIcon::Disabled);
  return icon;
}

}  // namespace outyard::widgets
