#include "app/parts/tokens.h"

#include "app/parts/resources.h"

#include <QFile>
#include <QJsonDocument>
#include <QJsonObject>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace mend::parts {

namespace {

constexpr std::array<std::pair<const char*, QColor Tokens::*>, 17> tokenNames{{
    {"ground", &Tokens::ground},
    {"card", &Tokens::card},
    {"ink", &Tokens::ink},
    {"ink2", &Tokens::ink2},
    {"hair", &Tokens::hair},
    {"edge", &Tokens::edge},
    {"gold", &Tokens::gold},
    {"goldText", &Tokens::goldText},
    {"block", &Tokens::block},
    {"onBlock", &Tokens::onBlock},
    {"onBlock2", &Tokens::onBlock2},
    {"goldOnBlock", &Tokens::goldOnBlock},
    {"plinth", &Tokens::plinth},
    {"plinthOnBlock", &Tokens::plinthOnBlock},
    {"pot", &Tokens::pot},
    {"potOnBlock", &Tokens::potOnBlock},
    {"potLine", &Tokens::potLine},
}};

Tokens readTokens(const QJsonObject& object)
{
    Tokens tokens;
    for (const auto& [name, member] : tokenNames) {
        tokens.*member = QColor(object.value(QLatin1String(name)).toString());
        Q_ASSERT((tokens.*member).isValid());
    }
    return tokens;
}

std::array<Tokens, 3> readThemes()
{
    const QJsonObject all = QJsonDocument::fromJson(lookResource(QStringLiteral("tokens.json"))).object();
    return {readTokens(all.value(QLatin1String("light")).toObject()),
            readTokens(all.value(QLatin1String("dark")).toObject()),
            readTokens(all.value(QLatin1String("contrast")).toObject())};
}

double linear(int channel)
{
    const double share = channel / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

} // namespace

const Tokens& tokensOf(Theme theme)
{
    static const std::array<Tokens, 3> themes = readThemes();
    return themes[static_cast<std::size_t>(theme)];
}

double luminance(const QColor& colour)
{
    return 0.2126 * linear(colour.red()) + 0.7152 * linear(colour.green()) + 0.0722 * linear(colour.blue());
}

double contrast(const QColor& a, const QColor& b)
{
    const double first = luminance(a);
    const double second = luminance(b);
    return (std::max(first, second) + 0.05) / (std::min(first, second) + 0.05);
}

} // namespace mend::parts
