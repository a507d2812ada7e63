#include "app/parts/type.h"

#include <QFontDatabase>
#include <QFontInfo>
#include <QStringList>

#include <algorithm>
#include <array>

namespace mend::parts {

namespace {

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
    const QStringList wanted{QStringLiteral("Lato"), QStringLiteral("Noto Sans"), QStringLiteral("Noto Sans Arabic"),
                             QStringLiteral("Noto Sans CJK JP"), QStringLiteral("DejaVu Sans")};
    const QStringList installed = QFontDatabase::families();
    QStringList found;
    std::ranges::copy_if(wanted, std::back_inserter(found),
                         [&](const QString& face) { return installed.contains(face); });
    return found.isEmpty() ? wanted : found;
}

} // namespace

double unitsOf(Role role) { return cuts[static_cast<std::size_t>(role)].units; }

Type::Type(Measure measure) : m_measure(measure), m_made(std::make_shared<Made>()) {}

QFont Type::font(Role role, double shrink) const
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
    m_made->emplace(std::pair(role, pixels), font);
    return font;
}

QString Type::family() { return QFontInfo(Type().font(Role::Body)).family(); }

} // namespace mend::parts
