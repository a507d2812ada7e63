// What is only told where it matters: condition, old mends, measures, body, and the steps that may be left out.
#include "app/intake/intakeform.h"

#include "core/service/figurewording.h"

#include <algorithm>
#include <cmath>

namespace mend::app {

using parts::Sheet;
using service::text;

namespace {

constexpr double mmPerInch = 25.4;             // exact by definition
constexpr double gramsPerOunce = 28.349523125; // exact: 453.59237 g / 16
constexpr double largest = 1'000'000;          // micrometres and milligrams of it still count exactly

/// Puts a key into a list or takes it out.
void turn(std::vector<std::string>& keys, const std::string& key)
{
    if (std::erase(keys, key) == 0) {
        keys.push_back(key);
    }
}

bool holds(const std::vector<std::string>& keys, const std::string& key)
{
    return std::ranges::find(keys, key) != keys.end();
}

/// What stands between the semicolons, as a list; nothing between two of them is nothing.
std::vector<std::string> betweenSemicolons(const QString& typed)
{
    std::vector<std::string> lines;
    for (const QString& line : typed.split(QLatin1Char(';'), Qt::SkipEmptyParts)) {
        if (!line.trimmed().isEmpty()) {
            lines.push_back(line.trimmed().toStdString());
        }
    }
    return lines;
}

} // namespace

void IntakeForm::addMore()
{
    Sheet::Choices toggle;
    toggle.choices = {{QStringLiteral("intake/more"),
                       m_space.m_more ? IntakeSpace::tr("Less") : IntakeSpace::tr("More about it"),
                       {},
                       [space = &m_space] {
                           space->m_more = !space->m_more;
                           space->refresh();
                       },
                       false,
                       m_space.m_more}};
    m_sheet.add(std::move(toggle));
    if (!m_space.m_more) {
        return;
    }
    askOptions();
    record::Visit& visit = m_page.visit;
    m_sheet.add(words("visit/condition/seen", IntakeSpace::tr("What is seen: cracks, losses, old mends"),
                      visit.condition.seen));
    m_sheet.add(
        words("visit/condition/inferred", IntakeSpace::tr("What you make of it"), visit.condition.inferred, true));
    m_sheet.add(words("visit/wishes", IntakeSpace::tr("What the owner would like"), visit.wishes));
    m_sheet.add(words("visit/story", IntakeSpace::tr("What the owner tells of it"), visit.story, true));
    m_sheet.add(words("piece/maker", IntakeSpace::tr("Maker or place"), m_page.piece.maker));
    m_sheet.add(words("piece/marks", IntakeSpace::tr("Marks on it"), m_page.piece.marks, true));
    m_sheet.add(money("visit/declaredValue", IntakeSpace::tr("Worth, as the owner says"), visit.declaredValue));
    addOldMends();
    addMeasures();
    using record::Body;
    Sheet::Choices body;
    body.label = IntakeSpace::tr("Its body");
    const auto add = [&](const char* key, const QString& label, Body value) {
        body.choices.push_back({QStringLiteral("intake/body/") + QLatin1String(key),
                                label,
                                {},
                                changing([value](record::Intake& page) { page.piece.body = value; }),
                                false,
                                m_page.piece.body == value});
    };
    add("porous", IntakeSpace::tr("Porous"), Body::Porous);
    add("vitrified", IntakeSpace::tr("Vitrified"), Body::Vitrified);
    add("unknown", IntakeSpace::tr("Not known"), Body::Unknown);
    m_sheet.add(std::move(body));
}

/// What holds the piece together from before sets limits of its own: how warm it may get, which solvent may come near.
void IntakeForm::addOldMends()
{
    const QString key = QStringLiteral("visit/condition/oldMends");
    Sheet::Field field;
    field.key = key;
    field.label = IntakeSpace::tr("Old mends, one behind the other with ; between them");
    QStringList told;
    for (const std::string& mend : m_page.visit.condition.oldMends) {
        told += text(mend);
    }
    field.value = typedOr(key, told.join(QStringLiteral("; ")));
    field.edited = [space = &m_space, key](const QString& words) {
        space->m_typed[key] = words;
        space->m_page.visit.condition.oldMends = betweenSemicolons(words);
        space->change();
    };
    m_sheet.add(std::move(field));
    Sheet::Choices holding;
    holding.label =
        IntakeSpace::tr("What is in it from before? It says how warm the piece may get and which solvent may "
                        "come near it.");
    for (const IntakeNow::Named& material : m_space.m_now.oldMaterials) {
        const std::string name = material.key.toStdString();
        holding.choices.push_back({QStringLiteral("intake/old/") + material.key,
                                   material.name,
                                   {},
                                   changing([name](record::Intake& page) { turn(page.piece.materialsInIt, name); }),
                                   false,
                                   holds(m_page.piece.materialsInIt, name)});
    }
    m_sheet.add(std::move(holding));
}

/// The steps of the procedure that are done only where they were agreed.
void IntakeForm::askOptions()
{
    const auto procedure =
        std::ranges::find(m_space.m_now.procedures, text(m_page.piece.procedure), &IntakeNow::Procedure::key);
    if (procedure == m_space.m_now.procedures.end() || procedure->options.empty()) {
        return;
    }
    Sheet::Choices options;
    options.label = IntakeSpace::tr("Also agreed, where it is wanted");
    for (const IntakeNow::Named& stage : procedure->options) {
        const std::string key = stage.key.toStdString();
        options.choices.push_back({QStringLiteral("intake/option/") + stage.key,
                                   stage.name,
                                   {},
                                   changing([key](record::Intake& page) { turn(page.piece.optionalStages, key); }),
                                   false,
                                   holds(m_page.piece.optionalStages, key)});
    }
    m_sheet.add(std::move(options));
}

/// A measure in the unit of the studio, as people of this language type numbers.
Sheet::Field IntakeForm::measure(const char* key, const QString& label, const QString& unit, double shown,
                                 std::function<void(std::optional<double>)> told, bool pair)
{
    const QString name = QString::fromLatin1(key);
    Sheet::Field field;
    field.key = name;
    field.label = label;
    field.unit = unit;
    field.figures = true;
    field.pair = pair;
    const QLocale locale = m_space.m_now.manner.locale;
    constexpr int digits = 6;
    field.value = typedOr(name, shown > 0 ? locale.toString(shown, 'g', digits) : QString());
    const auto read = [locale](const QString& words) -> std::optional<double> {
        const auto number = service::typedNumber(words, locale);
        return number && *number > 0 && *number <= largest ? number : std::nullopt;
    };
    if (!field.value.trimmed().isEmpty() && !read(field.value)) {
        field.fault = IntakeSpace::tr("A number above nothing, such as 82 or %1.").arg(locale.toString(82.5));
    }
    field.edited = [space = &m_space, name, read, told = std::move(told)](const QString& words) {
        space->m_typed[name] = words;
        told(read(words));
        space->change();
    };
    return field;
}

Sheet::Field IntakeForm::length(const char* key, const QString& label, std::optional<Length>& to, bool pair)
{
    const bool inches = m_space.m_now.manner.inches;
    const double unit = inches ? mmPerInch : 1.0;
    return measure(
        key, label, inches ? IntakeSpace::tr("in") : IntakeSpace::tr("mm"), to ? inMillimetres(*to) / unit : 0,
        [held = &to, unit](std::optional<double> value) {
            *held = value ? std::optional(millimetres(*value * unit)) : std::nullopt;
        },
        pair);
}

/// A length that work is reckoned by: of seams, of losses.
Sheet::Field IntakeForm::run(const char* key, const QString& label, Length& to, bool pair)
{
    const bool inches = m_space.m_now.manner.inches;
    constexpr double mmPerCm = 10.0;
    const double unit = inches ? mmPerInch : mmPerCm;
    return measure(
        key, label, inches ? IntakeSpace::tr("in") : IntakeSpace::tr("cm"), inMillimetres(to) / unit,
        [held = &to, unit](std::optional<double> value) { *held = millimetres(value.value_or(0) * unit); }, pair);
}

void IntakeForm::addMeasures()
{
    record::Piece& piece = m_page.piece;
    m_sheet.add(length("piece/size/height", IntakeSpace::tr("Height"), piece.size.height));
    m_sheet.add(length("piece/size/width", IntakeSpace::tr("Width"), piece.size.width, true));
    m_sheet.add(length("piece/size/depth", IntakeSpace::tr("Depth"), piece.size.depth));
    m_sheet.add(length("piece/size/wall", IntakeSpace::tr("Wall at the break"), piece.size.wall, true));
    const bool ounces = m_space.m_now.manner.inches;
    const double unit = ounces ? gramsPerOunce : 1.0;
    m_sheet.add(measure("piece/size/mass", IntakeSpace::tr("Weight"),
                        ounces ? IntakeSpace::tr("oz") : IntakeSpace::tr("g"),
                        piece.size.mass ? inGrams(*piece.size.mass) / unit : 0,
                        [held = &piece.size.mass, unit](std::optional<double> value) {
                            *held = value ? std::optional(grams(*value * unit)) : std::nullopt;
                        }));
    m_sheet.add(run("piece/seam", IntakeSpace::tr("Seams on both faces, added up"), piece.seam));
    m_sheet.add(run("piece/chip", IntakeSpace::tr("Chips and losses to fill, added up"), piece.chip, true));
}

} // namespace mend::app
