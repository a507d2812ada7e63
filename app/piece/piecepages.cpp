// The pages of the Piece space that tell and ask about the piece itself.
#include "app/piece/piecespace.h"

#include "core/service/doorwording.h"

#include <QDir>
#include <algorithm>

namespace mend::app {

using parts::Sheet;
using service::text;

namespace {

void facts(Sheet& sheet, const std::vector<Sheet::Facts::Fact>& all)
{
    Sheet::Facts block;
    for (const auto& fact : all) {
        if (fact.value.size() > 40) { // a sentence stands by itself
            sheet.say(PieceSpace::tr("%1: %2").arg(fact.label, fact.value));
        } else {
            block.all.push_back(fact);
        }
    }
    if (!block.all.empty()) {
        sheet.add(std::move(block));
    }
}

QString reasonOf(record::CameFor reason)
{
    switch (reason) {
    case record::CameFor::FirstTime:
        return PieceSpace::tr("the first time");
    case record::CameFor::JoinFailed:
        return PieceSpace::tr("a join gave way");
    case record::CameFor::BrokenAnew:
        return PieceSpace::tr("broken anew");
    case record::CameFor::FragmentFound:
        return PieceSpace::tr("a fragment was found");
    case record::CameFor::Another:
        return PieceSpace::tr("another reason");
    }
    return {};
}

} // namespace

Sheet PieceSpace::conditionSheet()
{
    Sheet sheet;
    const record::Visit* visit = m_now->file.visit();
    sheet.title = tr("Condition and consent");
    if (!visit) {
        sheet.say(tr("It was taken in with the short form: nothing was written down of its condition."));
        facts(sheet, m_now->object);
        return sheet;
    }
    const record::Condition& condition = visit->condition;
    sheet.head(tr("Seen"));
    sheet.say(condition.seen.empty() ? tr("Nothing written down.") : text(condition.seen));
    if (!condition.how.empty()) {
        sheet.say(tr("Looked at: %1").arg(text(condition.how)), Sheet::Tone::Quiet);
    }
    for (const std::string& mend : condition.oldMends) {
        sheet.say(tr("Old mend: %1").arg(text(mend)));
    }
    sheet.head(tr("Inferred, not seen"));
    sheet.say(condition.inferred.empty() ? tr("Nothing.") : text(condition.inferred),
              condition.inferred.empty() ? Sheet::Tone::Quiet : Sheet::Tone::Plain);
    sheet.add(Sheet::Choices{{}, {{QStringLiteral("home/edit"), tr("Put it right"), {}, [this, copy = *visit] {
                                       m_editing = copy;
                                       refresh();
                                       page().scrollTo(0);
                                   }}}});
    sheet.head(tr("Consent"));
    const record::Consent& consent = visit->consent;
    if (consent.isSigned()) {
        sheet.say(consent.how == record::Signature::OnPaper
                      ? tr("Signed on paper, %1.").arg(service::dayWords(*consent.signedOn, m_manner))
                      : tr("Signed on the screen, %1.").arg(service::dayWords(*consent.signedOn, m_manner)));
    } else {
        sheet.say(tr("Not signed."), Sheet::Tone::Grave);
    }
    if (!consent.scope.empty()) {
        sheet.say(text(consent.scope));
    }
    for (const QString& point : m_now->agreed) {
        sheet.say(point, Sheet::Tone::Quiet);
    }
    sheet.head(tr("What it is"));
    facts(sheet, m_now->object);
    if (!visit->wishes.empty()) {
        sheet.say(tr("Wished for: %1").arg(text(visit->wishes)));
    }
    if (!visit->story.empty()) {
        sheet.say(tr("Told of it: %1").arg(text(visit->story)));
    }
    return sheet;
}

Sheet PieceSpace::editSheet()
{
    Sheet sheet;
    sheet.title = tr("Put the condition right");
    record::Condition& condition = m_editing->condition;
    const auto ask = [&](const char* key, const QString& label, std::string record::Condition::*part) {
        sheet.add(
            Sheet::Field{QLatin1String(key), label, text(condition.*part), {}, {}, [this, part](const QString& typed) {
                             if (m_editing) {
                                 m_editing->condition.*part = typed.toStdString();
                             }
                         }});
    };
    ask("seen", tr("What is seen"), &record::Condition::seen);
    ask("inferred", tr("What is inferred from it, kept apart"), &record::Condition::inferred);
    ask("how", tr("By what it was looked at"), &record::Condition::how);
    sheet.add(Sheet::Choices{{},
                             {{QStringLiteral("home/keepcondition"),
                               tr("Keep it so"),
                               {},
                               [this] {
                                   const record::Visit told = *m_editing;
                                   m_editing.reset();
                                   Q_EMIT conditionTold(told);
                                   refresh();
                               },
                               true},
                              {QStringLiteral("home/see/leave"), tr("Leave it as it was"), {}, [this] {
                                   m_editing.reset();
                                   refresh();
                               }}}});
    return sheet;
}

Sheet PieceSpace::countsSheet()
{
    Sheet sheet;
    sheet.title = tr("Fragments and what came with it");
    facts(sheet, m_now->counted);
    Sheet::Facts counts;
    const auto said = [&](const QString& what, const bench::InAndOut& count) {
        if (count.in || count.out) {
            const auto number = [&](const std::optional<int>& of) {
                return of ? m_manner.locale.toString(*of) : tr("not counted");
            };
            counts.all.push_back({what, tr("in %1, out %2").arg(number(count.in), number(count.out))});
        }
    };
    said(tr("Fragments"), m_now->facts.fragments);
    said(tr("What came with it"), m_now->facts.accessories);
    if (!counts.all.empty()) {
        sheet.add(std::move(counts));
    }
    if (!m_now->inHand) {
        return sheet;
    }
    sheet.head(tr("A fragment was found"));
    bool good = false;
    const int count = m_count.trimmed().toInt(&good);
    const bool isWrong = !m_count.trimmed().isEmpty() && (!good || count < 1 || count > 999);
    sheet.add(Sheet::Field{QStringLiteral("found"), tr("How many"), m_count, tr("fragments"),
                           isWrong ? tr("A whole number from 1 to 999.") : QString(), [this](const QString& typed) {
                               m_count = typed;
                               refresh();
                           }});
    sheet.add(
        Sheet::Field{QStringLiteral("where"), tr("Where it was found"), m_where, {}, {}, [this](const QString& typed) {
                         m_where = typed;
                     }});
    Sheet::Choice keep{QStringLiteral("home/found"), tr("Count it in"), {}, {}, true};
    if (good && !isWrong) {
        keep.act = [this, count] {
            const QString where = m_where.trimmed();
            m_count.clear();
            m_where.clear();
            Q_EMIT fragmentFound(count, where);
            refresh();
        };
    } else {
        keep.below = tr("say how many");
    }
    sheet.add(Sheet::Choices{{}, {keep}});
    return sheet;
}

Sheet PieceSpace::stagesSheet()
{
    Sheet sheet;
    sheet.title = tr("Stages");
    sheet.beside = m_now->procedure;
    int number = 0;
    const auto list = [&](const QString& title, bool settled) {
        const bool any =
            std::ranges::any_of(m_now->stages, [settled](const auto& stage) { return stage.isSettled() == settled; });
        if (!any) {
            return;
        }
        sheet.head(title);
        for (const service::StageLine& stage : m_now->stages) {
            if (stage.isSettled() != settled) {
                continue;
            }
            const QString when = stage.at ? service::clockTime(*stage.at, m_now->at, m_manner) : QString();
            sheet.add(Sheet::Row{QStringLiteral("home/stage/%1").arg(number++), stage.words, stage.below, when});
        }
    };
    list(tr("Done"), true);
    list(tr("To do"), false);
    if (m_now->stages.empty()) {
        sheet.say(m_now->inHand ? tr("Nothing is agreed yet.")
                                : tr("It is not in the house: its record says what was done."));
    }
    return sheet;
}

Sheet PieceSpace::visitsSheet()
{
    Sheet sheet;
    sheet.title = tr("Visits");
    sheet.beside = tr("a piece that comes back keeps its number");
    const auto& visits = m_now->file.dossier.visits;
    for (auto facts = visits.rbegin(); facts != visits.rend(); ++facts) {
        const auto told = std::ranges::find(m_now->file.visits, facts->number, &record::Visit::number);
        QStringList words;
        if (told != m_now->file.visits.end()) {
            words += reasonOf(told->cameFor);
            if (!told->condition.seen.empty()) {
                words += text(told->condition.seen);
            }
        }
        for (const bench::NamedFault& fault : facts->faults) {
            words += fault.note.empty() ? tr("what gave way was named") : text(fault.note);
        }
        if (facts->handedOver) {
            words += tr("handed over %1").arg(day(facts->handedOver->at));
        } else if (facts->returnedUnmended) {
            words += tr("returned unmended %1").arg(day(*facts->returnedUnmended));
        }
        sheet.add(Sheet::Row{QStringLiteral("home/visit/%1").arg(facts->number), tr("Visit %1").arg(facts->number),
                             service::joined(words), facts->receivedAt ? day(*facts->receivedAt) : QString()});
    }
    askFault(sheet);
    return sheet;
}

/// A piece that has come back: what was put into it before is offered as what gave way.
void PieceSpace::askFault(Sheet& sheet)
{
    if (!m_now->inHand || m_now->earlier.empty()) {
        return;
    }
    sheet.head(tr("What gave way?"));
    sheet.add(Sheet::Field{QStringLiteral("fault"),
                           tr("In your own words, such as “the join at the handle”"),
                           m_about,
                           {},
                           {},
                           [this](const QString& typed) { m_about = typed; }});
    const auto name = [this](const bench::StageInstance& stage, MixId mix) {
        const QString note = m_about.trimmed();
        m_about.clear();
        Q_EMIT faultNamed(stage, mix, note);
        refresh();
    };
    int number = 0;
    for (const MayHaveGivenWay& each : m_now->earlier) {
        sheet.add(Sheet::Row{QStringLiteral("home/fault/%1").arg(number++), each.words, each.below, tr("It was this"),
                             [name, each] { name(each.stage, each.mix); }});
    }
}

Sheet PieceSpace::ownerSheet()
{
    Sheet sheet;
    const bench::VisitFacts& visit = m_now->file.dossier.now();
    sheet.title = tr("Its owner, told and owed");
    sheet.back = {QStringLiteral("home/see/hide"),
                  m_now->ownerHidden ? tr("Show the owner") : tr("Hide the owner"),
                  {},
                  [this, hide = !m_now->ownerHidden] { Q_EMIT ownerHiddenWanted(hide); }};
    if (!m_now->ownerHidden) {
        for (const record::ContactWay& way : record::contactsOf(m_now->file.owner)) {
            sheet.say(text(way.text));
        }
        if (!m_now->file.owner.note.empty()) {
            sheet.say(text(m_now->file.owner.note), Sheet::Tone::Quiet);
        }
    }
    Sheet::Facts sums;
    const auto money = [&](const QString& label, const std::optional<Money>& sum) {
        if (sum) {
            sums.all.push_back({label, service::moneyWords(*sum, m_manner)});
        }
    };
    money(tr("Price"), m_now->facts.owed.price);
    money(tr("Paid"), m_now->facts.owed.paid);
    money(tr("Still owed"), m_now->facts.owed.left);
    if (!sums.all.empty()) {
        sheet.add(std::move(sums));
    }
    sheet.head(tr("Told so far"));
    int number = 0;
    for (const bench::OwnerWord& word : visit.ownerWords) {
        bench::Event event;
        event.what = word.isNotice ? bench::What::NoticeGiven : bench::What::OwnerTold;
        event.word = word.how;
        sheet.add(Sheet::Row{QStringLiteral("home/told/%1").arg(number++), service::doorTold(event, m_manner),
                             text(word.about), day(word.at)});
    }
    if (visit.ownerWords.empty()) {
        sheet.say(tr("Nothing yet."), Sheet::Tone::Quiet);
    }
    if (!m_now->inHand) {
        return sheet;
    }
    sheet.head(tr("Told now"));
    sheet.add(Sheet::Field{
        QStringLiteral("about"), tr("What about"), m_about, {}, {}, [this](const QString& typed) { m_about = typed; }});
    const auto tell = [this](const char* how, bool isNotice) {
        return [this, how = QString::fromLatin1(how), isNotice] {
            const QString about = m_about.trimmed();
            m_about.clear();
            Q_EMIT ownerTold(how, about, isNotice);
            refresh();
        };
    };
    sheet.add(Sheet::Choices{{},
                             {{QStringLiteral("home/tell/phone"), tr("Rung"), {}, tell("phone", false)},
                              {QStringLiteral("home/tell/mail"), tr("Written by e-mail"), {}, tell("mail", false)},
                              {QStringLiteral("home/tell/inPerson"), tr("In person"), {}, tell("inPerson", false)}}});
    sheet.add(Sheet::Choices{
        tr("Notice in form, because it lies here unclaimed. It is only logged: nothing is ever "
           "disposed of by itself, and local law says what may follow."),
        {{QStringLiteral("home/notice/letter"), tr("By letter"), {}, tell("letter", true)},
         {QStringLiteral("home/notice/recorded"), tr("By recorded letter"), {}, tell("recordedLetter", true)}}});
    return sheet;
}

Sheet PieceSpace::papersSheet()
{
    Sheet sheet;
    sheet.title = tr("Papers");
    sheet.beside = tr("PDF, to print or to send");
    sheet.add(
        Sheet::Field{QStringLiteral("paperFolder"),
                     tr("Into this folder"),
                     m_paperFolder,
                     {},
                     QDir(m_paperFolder).exists() ? QString() : tr("There is no such folder yet; it will be made."),
                     [this](const QString& typed) {
                         m_paperFolder = typed;
                         Q_EMIT paperFolderTold(typed.trimmed());
                         refresh();
                     }});
    sheet.add(Sheet::Choices{tr("On"),
                             {{QStringLiteral("home/see/sheet/a4"),
                               tr("A4"),
                               {},
                               [this] { Q_EMIT sheetChosen(false); },
                               false,
                               !m_now->letter},
                              {QStringLiteral("home/see/sheet/letter"),
                               tr("Letter"),
                               {},
                               [this] { Q_EMIT sheetChosen(true); },
                               false,
                               m_now->letter}}});
    Sheet::Choices tags;
    tags.label = tr("The tag on");
    for (const TagOffer& tag : m_now->tags) {
        tags.choices.push_back({QStringLiteral("home/see/tag/") + tag.key,
                                tag.words,
                                {},
                                [this, key = tag.key] { Q_EMIT tagChosen(key); },
                                false,
                                tag.chosen});
    }
    sheet.add(std::move(tags));
    for (const PaperOffer& paper : m_now->papers) {
        sheet.add(Sheet::Row{QStringLiteral("home/see/paper/") + paper.key, paper.title, paper.written, tr("Write it"),
                             [this, key = paper.key] { Q_EMIT paperWanted(key); }});
    }
    return sheet;
}

} // namespace mend::app
