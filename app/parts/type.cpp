#include "app/parts/type.h"

#include <QFontDatabase>
#include <QFontInfo>
#include <QStringList>

#include <algorithm>
#include <array>

namespace mend::parts {

namespace {

constexpr qsizetype mostKnown = 5000; ///< widths of one font: some hundred kilobytes

struct Cut {
    double units;
    QFont::Weight weight;
};

constexpr std::array<Cut, 15> cuts{{
    {72.0, QFont::Black},  // BlockDigits
    {49.0, QFont::Black},  // BlockVerb
    {18.0, QFont::Normal}, // BlockText
    {29.0, QFont::Bold},   // BlockAct
    {31.0, QFont::Black},  // CardDigits
    {21.0, QFont::Bold},   // CardVerb
    {20.0, QFont::Bold},   // CardAct
    {34.0, QFont::Bold},   // Clock
    {20.0, QFont::Bold},   // Reading
    {20.0, QFont::Normal}, // RailWord
    {20.0, QFont::Bold},   // RailHere
    {18.0, QFont::Normal}, // Body
    {18.0, QFont::Bold},   // BodyBold
    {15.5, QFont::Normal}, // Reason
    {15.5, QFont::Bold},   // ReasonBold
}};

QStringList faces()
{
    const QStringList wanted{QStringLiteral("Lato"),
                             QStringLiteral("Noto Sans"),
                             QStringLiteral("Noto Sans Hebrew"),
                             QStringLiteral("Noto Sans Arabic"),
                             QStringLiteral("Noto Sans CJK JP"),
                             QStringLiteral("DejaVu Sans")};
    const QStringList installed = QFontDatabase::families();
    QStringList found;
    std::ranges::copy_if(wanted, std::back_inserter(found),
                         [&](const QString& face) { return installed.contains(face); });
    return found.isEmpty() ? wanted : found;
}

} // namespace

double unitsOf(Role role) { return cuts[static_cast<std::size_t>(role)].units; }

Type::Type(Measure measure) : m_measure(measure), m_made(std::make_shared<Made>()) {}

double Widths::of(const QString& words)
{
    const auto known = m_known.constFind(words);
    if (known != m_known.constEnd()) {
        return *known;
    }
    if (m_known.size() >= mostKnown) { // clocks bring new words every second
        m_known.clear();
    }
    const double width = m_metrics.horizontalAdvance(words);
    m_known.insert(words, width);
    return width;
}

Widths& Type::widths(Role role, double shrink) const
{
    static const QStringList families = faces();
    const Cut& cut = cuts[static_cast<std::size_t>(role)];
    const int pixels = m_measure.px(cut.units * shrink);
    const auto made = m_made->find({role, pixels});
    if (made != m_made->end()) {
        return made->second;
    }
    QFont font;
    font.setFamilies(families);
    font.setPixelSize(pixels);
    font.setWeight(cut.weight);
    font.setKerning(true);
    return m_made->emplace(std::pair(role, pixels), Widths(font)).first->second;
}

QString Type::family() { return QFontInfo(Type().font(Role::Body)).family(); }

} // namespace mend::parts
