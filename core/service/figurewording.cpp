#include "core/service/figurewording.h"

#include "core/rules/fields.h"

#include <QCoreApplication>

#include <array>
#include <cmath>

namespace mend::service {

namespace {

// What a translator finds these words under.
class FigureWords {
    Q_DECLARE_TR_FUNCTIONS(FigureWords)
};

struct TypedUnit {
    std::int64_t milliseconds;
    const char* word;
};
/// Longest first.
constexpr std::array<TypedUnit, 4> typedUnits{{{86'400'000, QT_TRANSLATE_NOOP("FigureWords", "days")},
                                               {3'600'000, QT_TRANSLATE_NOOP("FigureWords", "h")},
                                               {60'000, QT_TRANSLATE_NOOP("FigureWords", "min")},
                                               {1'000, QT_TRANSLATE_NOOP("FigureWords", "s")}}};

const TypedUnit& unitFor(const rules::SpanFigure& figure)
{
    for (const TypedUnit& unit : typedUnits) {
        // The range says the unit: the value may be changed to anything within it.
        if (figure.least.count() % unit.milliseconds == 0 && figure.most.count() % unit.milliseconds == 0 &&
            figure.most.count() >= unit.milliseconds && figure.value.count() % unit.milliseconds == 0) {
            return unit;
        }
    }
    return typedUnits.back();
}

QString plainNumber(double value, const QLocale& locale)
{
    QLocale ungrouped = locale;
    ungrouped.setNumberOptions(QLocale::OmitGroupSeparator);
    return ungrouped.toString(value, 'g', 10);
}

QString valueWords(Span value, const Manner&) { return spanWords(value); }
QString valueWords(Temperature value, const Manner& manner) { return temperatureWords(value, manner); }

} // namespace

QString markWords(rules::Mark mark)
{
    switch (mark) {
    case rules::Mark::Agency:
        return FigureWords::tr("published standard or paper");
    case rules::Mark::Museum:
        return FigureWords::tr("museum or maker's sheet");
    case rules::Mark::Studio:
        return FigureWords::tr("studio page");
    case rules::Mark::Derived:
        return FigureWords::tr("worked out from other figures");
    case rules::Mark::Memory:
        return FigureWords::tr("from memory");
    case rules::Mark::Practice:
        return FigureWords::tr("common practice, no source");
    }
    return {};
}

QString sourceWords(const rules::Source& source)
{
    const QString mark = markWords(source.mark);
    const QString from = text(source.text);
    return from.compare(mark, Qt::CaseInsensitive) == 0 ? mark : joined({from, mark});
}

QString figureValue(const rules::FigureAt& figure, const Manner& manner)
{
    return std::visit([&](const auto& held) { return valueWords(held.value, manner); }, figure.figure);
}

QString figureRange(const rules::FigureAt& figure, const Manner& manner)
{
    return std::visit(
        [&](const auto& held) {
            return FigureWords::tr("%1 to %2").arg(valueWords(held.least, manner), valueWords(held.most, manner));
        },
        figure.figure);
}

TypedFigure typedFigure(const rules::FigureAt& figure, const Manner& manner)
{
    if (const auto* span = std::get_if<rules::SpanFigure>(&figure.figure)) {
        const TypedUnit& unit = unitFor(*span);
        return {plainNumber(double(span->value.count()) / double(unit.milliseconds), manner.locale),
                FigureWords::tr(unit.word)};
    }
    const Temperature value = std::get<rules::TemperatureFigure>(figure.figure).value;
    return {plainNumber(manner.fahrenheit ? value.fahrenheit() : value.celsius(), manner.locale),
            manner.fahrenheit ? FigureWords::tr("°F") : FigureWords::tr("°C")};
}

std::optional<std::variant<Span, Temperature>> readFigure(const QString& typed, const rules::FigureAt& figure,
                                                          const Manner& manner)
{
    const auto number = typedNumber(typed, manner.locale);
    constexpr double beyondReason = 1e9; // no unit of ours has that many of anything
    if (!number || std::abs(*number) > beyondReason) {
        return std::nullopt;
    }
    if (const auto* span = std::get_if<rules::SpanFigure>(&figure.figure)) {
        return Span(std::llround(*number * double(unitFor(*span).milliseconds)));
    }
    return manner.fahrenheit ? Temperature::fromFahrenheit(*number) : Temperature::fromCelsius(*number);
}

std::optional<double> typedNumber(const QString& typed, const QLocale& locale)
{
    for (QLocale reader : {locale, QLocale::c()}) {
        reader.setNumberOptions(QLocale::RejectGroupSeparator);
        bool good = false;
        const double value = reader.toDouble(typed.trimmed(), &good);
        if (good && std::isfinite(value)) {
            return value;
        }
    }
    return std::nullopt;
}

QString originWords(const rules::Origin& origin, const rules::Procedure& procedure)
{
    const rules::Stage* stage = procedure.find(origin.stage);
    const QString name = FigureWords::tr("“%1”").arg(stage ? text(stage->act) : text(origin.stage));
    QString from;
    switch (origin.touch) {
    case rules::Touch::First:
        from = FigureWords::tr("from the first touch of %1");
        break;
    case rules::Touch::Last:
        from = FigureWords::tr("from the last touch of %1");
        break;
    case rules::Touch::Mixing:
        from = FigureWords::tr("from mixing for %1");
        break;
    }
    switch (origin.which) {
    case rules::Which::Same:
        return from.arg(name);
    case rules::Which::Previous:
        return from.arg(name) + FigureWords::tr(", the time before");
    case rules::Which::First:
        return from.arg(name) + FigureWords::tr(", its first time");
    case rules::Which::Last:
        return from.arg(name) + FigureWords::tr(", its last time");
    case rules::Which::Latest:
        return from.arg(name) + FigureWords::tr(", the latest time");
    }
    return from.arg(name);
}

QString conditionWords(const rules::Condition& condition)
{
    if (condition == "porous") {
        return FigureWords::tr("on a porous body");
    }
    if (condition == "vitrified") {
        return FigureWords::tr("on a vitrified body");
    }
    if (condition == "lifted") {
        return FigureWords::tr("once it was lifted or turned");
    }
    if (condition == "supported") {
        return FigureWords::tr("while it is supported");
    }
    return text(condition);
}

QString repeatWords(rules::Repeat repeat)
{
    switch (repeat) {
    case rules::Repeat::Once:
        return {};
    case rules::Repeat::Set:
        return FigureWords::tr("for each set");
    case rules::Repeat::Run:
        return FigureWords::tr("for each run");
    case rules::Repeat::Pass:
        return FigureWords::tr("for each pass");
    case rules::Repeat::Join:
        return FigureWords::tr("for each join");
    }
    return {};
}

} // namespace mend::service
