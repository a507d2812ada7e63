#include "tests/spaces/spacewalk.h"

#include <QDir>
#include <QLocale>
#include <QSet>
#include <algorithm>

namespace mend::app {

std::ostream& operator<<(std::ostream& out, const SpaceWay& way)
{
    return out << way.size.width() << "x" << way.size.height() << " theme " << int(way.theme) << " dpi " << way.dpi
               << " scale " << way.scale << (way.rtl ? " rtl" : "") << " " << way.language.toStdString();
}

QString SpaceWay::picture(const QString& what) const
{
    return QStringLiteral("%1-%2-%3-%4%5").arg(what).arg(size.width()).arg(int(theme)).arg(scale).arg(language);
}

std::vector<SpaceWay> spaceWays()
{
    using parts::Theme;
    return {{{1148, 704}, Theme::Light, 96, 1.0, false},       {{1148, 704}, Theme::Dark, 96, 1.0, false},
            {{1148, 704}, Theme::HighContrast, 96, 1.0, true}, {{1148, 704}, Theme::Light, 96, 1.5, false},
            {{1100, 640}, Theme::Dark, 96, 2.0, true},         {{1700, 1000}, Theme::Light, 149, 1.0, false},
            {{1700, 1000}, Theme::Dark, 149, 1.5, true},       {{500, 320}, Theme::Light, 96, 1.0, false}};
}

std::vector<SpaceWay> spokenWays()
{
    std::vector<SpaceWay> ways = spaceWays();
    addSpoken(ways);
    return ways;
}

namespace {

void walkFields(Walk& walk, const parts::SheetView& sheet, const parts::Look& look)
{
    for (const auto& [key, line] : sheet.fields()) {
        const QRectF drawn = QRectF(line->geometry()).adjusted(0, -look.measure.px(4), 0, look.measure.px(4));
        if (look.measure.inMillimetres(drawn.height()) < parts::otherActMm - 0.05) {
            walk.faults << QStringLiteral("too low to tap: field %1").arg(key);
        }
        if (line->accessibleName().trimmed().isEmpty()) {
            walk.faults << QStringLiteral("no name: field %1").arg(key);
        }
        const double ratio =
            parts::contrast(line->palette().color(QPalette::Text), line->palette().color(QPalette::Base));
        if (ratio < 4.5) {
            walk.faults << QStringLiteral("weak: field %1 at %2").arg(key).arg(ratio);
        }
        if (!sheet.rect().contains(line->geometry().center().x(), sheet.rect().center().y())) {
            walk.faults << QStringLiteral("off the sheet: field %1").arg(key);
        }
    }
}

} // namespace

Walk walkSheets(const std::vector<parts::SheetView*>& sheets, const parts::Look& look)
{
    Walk walk;
    std::vector<const parts::ActView*> views;
    for (auto* sheet : sheets) {
        if (!sheet->isVisible()) {
            continue;
        }
        sheet->scrollTo(0);
        walk.over(*sheet, look);
        walkFields(walk, *sheet, look);
        views.push_back(sheet);
        // Gaps are measured where they are seen: from the top to the foot.
        for (int at = 0; at < sheet->contentHeight(); at += std::max(1, sheet->height() / 2)) {
            sheet->scrollTo(at);
            Walk seen;
            seen.gaps({sheet}, look);
            walk.faults << seen.faults;
        }
        sheet->scrollTo(0);
    }
    walk.gaps(views, look);
    walk.faults.removeDuplicates();
    return walk;
}

int keepPicture(QWidget& window, const QString& name)
{
    const QImage image = window.grab().toImage();
    const QString folder = qEnvironmentVariable("MEND_PICTURES");
    if (!folder.isEmpty()) {
        QDir().mkpath(folder);
        image.save(folder + QLatin1Char('/') + name + QStringLiteral(".png"));
    }
    QSet<QRgb> seen;
    for (int y = 0; y < image.height(); y += 3) {
        for (int x = 0; x < image.width(); x += 3) {
            seen.insert(image.pixel(x, y));
        }
    }
    return static_cast<int>(seen.size());
}

bool click(parts::SheetView& sheet, const QString& key)
{
    if (!sheet.hit(key)) {
        return false;
    }
    sheet.reveal(key);
    const QPoint at = sheet.hit(key)->rect.center();
    QTest::mouseClick(&sheet, Qt::LeftButton, {}, at);
    return true;
}

bool type(parts::SheetView& sheet, const QString& field, const QString& words)
{
    QLineEdit* line = sheet.field(field);
    if (!line) {
        return false;
    }
    line->setFocus();
    line->selectAll();
    QTest::keyClick(line, Qt::Key_Delete);
    QTest::keyClicks(line, words);
    return true;
}

bool says(const parts::SheetView& sheet, const QString& words)
{
    return std::ranges::any_of(
        sheet.hits(), [&](const parts::Hit& hit) { return hit.name.contains(words) || hit.more.contains(words); });
}

} // namespace mend::app
