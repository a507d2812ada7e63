// Whose it is, what it is, how it will be mended.
#include "app/intake/intakeform.h"

#include "core/service/doorwording.h"

#include <algorithm>

namespace mend::app {

using parts::Sheet;
using service::text;

namespace {
constexpr std::size_t peopleOffered = 3;
constexpr qsizetype lastDigits = 2;

} // namespace

IntakeForm::IntakeForm(IntakeSpace& space) : m_space(space), m_page(space.m_page)
{
    if (space.m_tried) {
        m_faults = space.faults();
    }
}

Sheet IntakeForm::take()
{
    m_sheet.title = IntakeSpace::tr("Intake");
    m_sheet.beside = IntakeSpace::tr("from top to bottom; the rest can follow");
    addOwner();
    addPiece();
    addMending();
    addConsent();
    addMore();
    return std::move(m_sheet);
}

QString IntakeForm::fault(const char* key) const
{
    for (const record::IntakeFault fault : m_faults) {
        if (qstrcmp(service::intakeFaultField(fault), key) == 0) {
            return service::intakeFaultWords(fault);
        }
    }
    return {};
}

std::function<void()> IntakeForm::changing(std::function<void(record::Intake&)> change)
{
    return [space = &m_space, change = std::move(change)] {
        change(space->m_page);
        space->change();
    };
}

QString IntakeForm::typedOr(const QString& key, const QString& kept) const
{
    const auto typed = m_space.m_typed.find(key);
    return typed != m_space.m_typed.end() ? typed->second : kept;
}

Sheet::Field IntakeForm::words(const char* key, const QString& label, std::string& to, bool pair)
{
    Sheet::Field field;
    field.key = QString::fromLatin1(key);
    field.label = label;
    field.value = text(to);
    field.fault = fault(key);
    field.edited = [space = &m_space, held = &to](const QString& typed) {
        *held = typed.toStdString();
        space->change();
    };
    field.pair = pair;
    return field;
}

void IntakeForm::addOwner()
{
    m_sheet.head(IntakeSpace::tr("Whose it is"));
    Sheet::Field name = words("owner/name", IntakeSpace::tr("Name"), m_page.owner.name);
    name.edited = [space = &m_space](const QString& typed) {
        record::Customer& owner = space->m_page.owner;
        if (owner.id.isSet()) { // another name is another person, until somebody says otherwise
            owner = {};
            space->m_page.piece.id = {};
            space->m_hers.clear();
        }
        owner.name = typed.toStdString();
        space->m_page.samePersonAnswered = false;
        space->change();
        Q_EMIT space->nameTyped(typed);
    };
    m_sheet.add(std::move(name));
    Sheet::Field contact =
        words("owner/contact", IntakeSpace::tr("Phone, mail or address"), m_page.owner.contact, true);
    m_sheet.add(std::move(contact));
    offerKnown();
    offerHers();
}

/// Enough of a contact to ask "is it the one that ends in 42?", too little for whoever else reads it.
QString IntakeForm::contactHint(const record::Customer& person)
{
    const QString key = text(record::phoneKey(person.contact));
    return key.isEmpty() ? QString() : IntakeSpace::tr("phone ends in %1").arg(key.right(lastDigits));
}

/// Somebody known already, so that one person does not become two; two are never made one unasked.
void IntakeForm::offerKnown()
{
    if (m_page.owner.id.isSet()) {
        m_sheet.say(IntakeSpace::tr("Known already: the piece goes to the same person."), Sheet::Tone::Quiet);
        return;
    }
    if (m_space.m_known.empty() || m_page.owner.name.empty() || m_page.samePersonAnswered) {
        return;
    }
    Sheet::Choices known;
    known.label = IntakeSpace::tr("Was it somebody of these?");
    for (std::size_t i = 0; i < std::min(peopleOffered, m_space.m_known.size()); ++i) {
        const record::Customer& person = m_space.m_known[i];
        known.choices.push_back({QStringLiteral("intake/owner/%1").arg(person.id.value()),
                                 service::isolated(text(person.name)), contactHint(person),
                                 [space = &m_space, person] { space->choose(person); }});
    }
    known.choices.push_back({QStringLiteral("intake/owner/new"), IntakeSpace::tr("None of them"),
                             IntakeSpace::tr("somebody new"),
                             changing([](record::Intake& page) { page.samePersonAnswered = true; })});
    m_sheet.add(std::move(known));
}

/// A piece that comes back keeps its number.
void IntakeForm::offerHers()
{
    if (m_space.m_hers.empty()) {
        return;
    }
    Sheet::Choices back;
    back.label = IntakeSpace::tr("Does one of their pieces come back?");
    for (const record::Piece& piece : m_space.m_hers) {
        if (back.choices.size() == peopleOffered) {
            break;
        }
        const bool chosen = m_page.piece.id == piece.id;
        back.choices.push_back(
            {QStringLiteral("intake/back/%1").arg(piece.id.value()), service::isolated(text(piece.benchName)),
             service::numberWords(piece.number), changing([space = &m_space, piece, chosen](record::Intake& page) {
                 // What was typed of another piece is not of this one.
                 std::erase_if(space->m_typed,
                               [](const auto& line) { return line.first.startsWith(QLatin1String("piece/")); });
                 page.piece = chosen ? record::Piece{} : piece;
                 page.piece.fragments = 0; // counted anew
                 page.visit.procedure = page.piece.procedure;
                 page.visit.cameFor = chosen ? record::CameFor::FirstTime : record::CameFor::JoinFailed;
             }),
             false, chosen});
    }
    m_sheet.add(std::move(back));
    if (!m_page.piece.id.isSet()) {
        return;
    }
    using record::CameFor;
    Sheet::Choices why;
    why.label = IntakeSpace::tr("Why it is here again");
    const auto add = [&](const char* key, const QString& label, CameFor reason) {
        why.choices.push_back({QStringLiteral("intake/why/") + QLatin1String(key),
                               label,
                               {},
                               changing([reason](record::Intake& page) { page.visit.cameFor = reason; }),
                               false,
                               m_page.visit.cameFor == reason});
    };
    add("join", IntakeSpace::tr("A join gave way"), CameFor::JoinFailed);
    add("anew", IntakeSpace::tr("Broken anew"), CameFor::BrokenAnew);
    add("fragment", IntakeSpace::tr("A fragment was found"), CameFor::FragmentFound);
    add("another", IntakeSpace::tr("Something else"), CameFor::Another);
    m_sheet.add(std::move(why));
}

void IntakeForm::addPiece()
{
    m_sheet.head(IntakeSpace::tr("What it is"));
    askBenchName();
    askFragments();
    addAccessories();
}

void IntakeForm::askBenchName()
{
    m_sheet.add(
        words("piece/benchName", IntakeSpace::tr("Called at the bench, such as “Heron bowl”"), m_page.piece.benchName));
    m_sheet.add(words("piece/looks", IntakeSpace::tr("What it looks like"), m_page.piece.looks, true));
    const auto alike = m_space.m_answers ? m_space.m_answers->alikeNames(m_page) : std::vector<std::string>{};
    if (alike.empty() || m_page.alikeNamesAccepted || m_page.piece.benchName.empty()) {
        return;
    }
    Sheet::Choices keep;
    keep.label = IntakeSpace::tr("It sounds like “%1” in the house: a word more tells them apart by ear.")
                     .arg(text(alike.front()));
    keep.choices = {
        {QStringLiteral("intake/alike"), IntakeSpace::tr("Keep both names"), {}, changing([](record::Intake& page) {
             page.alikeNamesAccepted = true;
         })}};
    m_sheet.add(std::move(keep));
}

void IntakeForm::askFragments()
{
    const QString key = QStringLiteral("piece/fragments");
    Sheet::Field field;
    field.key = key;
    field.label = IntakeSpace::tr("or another count");
    field.figures = true;
    field.value = typedOr(key, m_page.piece.fragments > 0 ? QString::number(m_page.piece.fragments) : QString());
    field.unit = IntakeSpace::tr("fragments");
    field.fault = fault("piece/fragments");
    const auto told = [space = &m_space, key](const QString& words) {
        bool good = false;
        const int count = words.trimmed().toInt(&good);
        space->m_typed[key] = words;
        space->m_page.piece.fragments = good ? count : 0;
        space->m_page.visit.fragments = space->m_page.piece.fragments;
        space->change();
    };
    field.edited = told;
    Sheet::Choices counts;
    counts.label = IntakeSpace::tr("Fragments, counted");
    for (const int count : {2, 3, 4, 5, 6, 8, 10}) {
        counts.choices.push_back({QStringLiteral("intake/fragments/%1").arg(count),
                                  QString::number(count),
                                  {},
                                  [told, count] { told(QString::number(count)); },
                                  false,
                                  m_page.piece.fragments == count});
    }
    m_sheet.add(std::move(counts));
    m_sheet.add(std::move(field));
}

void IntakeForm::addAccessories()
{
    Sheet::Choices with;
    with.label = IntakeSpace::tr("What came with it");
    struct Usual {
        const char* key;
        QString label;
        QString written; ///< in a sentence: not every language begins a noun with a small letter there
    };
    const std::vector<Usual> usual{{"lid", IntakeSpace::tr("Lid"), IntakeSpace::tr("lid")},
                                   {"stand", IntakeSpace::tr("Stand"), IntakeSpace::tr("stand")},
                                   {"box", IntakeSpace::tr("Box"), IntakeSpace::tr("box")},
                                   {"crumbs", IntakeSpace::tr("Bag of crumbs"), IntakeSpace::tr("bag of crumbs")}};
    for (const auto& [key, label, written] : usual) {
        const std::string what = written.toStdString();
        const auto has = [what](const record::Accessory& each) { return each.what == what; };
        const bool chosen = std::ranges::any_of(m_page.visit.accessories, has);
        with.choices.push_back({QStringLiteral("intake/with/") + QLatin1String(key),
                                label,
                                {},
                                changing([what, has, chosen](record::Intake& page) {
                                    if (chosen) {
                                        std::erase_if(page.visit.accessories, has);
                                    } else {
                                        page.visit.accessories.push_back({what, 1});
                                    }
                                }),
                                false,
                                chosen});
    }
    m_sheet.add(std::move(with));
}

void IntakeForm::addMending()
{
    m_sheet.head(IntakeSpace::tr("How it will be mended"));
    Sheet::Choices ways;
    for (const IntakeNow::Procedure& each : m_space.m_now.procedures) {
        const std::string key = each.key.toStdString();
        ways.choices.push_back({QStringLiteral("intake/procedure/") + each.key,
                                each.name,
                                {},
                                changing([key](record::Intake& page) {
                                    if (page.piece.procedure != key) {
                                        page.piece.optionalStages.clear(); // of the other one
                                    }
                                    page.piece.procedure = key;
                                    page.visit.procedure = key;
                                }),
                                false,
                                m_page.piece.procedure == key});
    }
    m_sheet.add(std::move(ways));
    if (const QString wrong = fault("piece/procedure"); !wrong.isEmpty()) {
        m_sheet.say(wrong, Sheet::Tone::Grave);
    }
    addPromise();
    addMoney();
}

} // namespace mend::app
