#include "app/handover/handoverspace.h"

#include "core/service/doorwording.h"

#include <algorithm>
#include <numeric>

namespace mend::app {

using parts::Sheet;
using service::HandingOver;
using service::text;

namespace {
constexpr int mostFragments = 999;
}

HandOverSpace::HandOverSpace(parts::TapGate& gate, QWidget* parent)
    : SheetSpace(gate, parent), m_pad(new parts::SignaturePad)
{
    list().setAccessibleName(tr("What goes out"));
    page().setAccessibleName(tr("Who takes it"));
    page().setInset(QStringLiteral("signature"), m_pad);
    connect(m_pad, &parts::SignaturePad::changed, this, [this] {
        m_told.signedHow = m_pad->isEmpty() ? "" : "drawn";
        refresh();
    });
}

void HandOverSpace::setLook(const parts::Look& look)
{
    m_pad->setLook(look);
    SheetSpace::setLook(look);
}

void HandOverSpace::setNow(std::shared_ptr<const HandOverNow> now)
{
    const bool other = !m_now || m_now->file.piece.id != now->file.piece.id;
    m_now = std::move(now);
    if (other) {
        begin();
    }
    refresh();
}

void HandOverSpace::begin()
{
    m_told = {};
    m_told.piece = m_now->file.piece.id;
    m_done.reset();
    m_said.clear();
    m_fragments.clear();
    m_goes.assign(m_now->facts.accessoryList.size(), false);
    m_owedAnswered = m_tried = false;
    m_pad->clear();
    list().scrollTo(0);
    page().scrollTo(0);
}

void HandOverSpace::setDone(std::optional<HandedOver> done)
{
    const bool isOver = m_done && !done;
    m_done = std::move(done);
    if (isOver && m_now) {
        begin();
    }
    refresh();
}

void HandOverSpace::say(const QString& words)
{
    m_said = words;
    refresh();
}

bool HandOverSpace::has(Against against) const
{
    return std::ranges::find(m_now->facts.against, against) != m_now->facts.against.end();
}

int HandOverSpace::fragmentsIn() const
{
    const int agreed = m_now->file.piece.fragments + m_now->file.dossier.now().fragmentsFound;
    return m_now->facts.fragments.in.value_or(agreed);
}

int HandOverSpace::accessoriesIn() const
{
    const auto& all = m_now->facts.accessoryList;
    return std::accumulate(all.begin(), all.end(), 0,
                           [](int sum, const record::Accessory& each) { return sum + each.count; });
}

void HandOverSpace::countAccessories()
{
    int out = 0;
    for (std::size_t i = 0; i < m_goes.size(); ++i) {
        out += m_goes[i] ? m_now->facts.accessoryList[i].count : 0;
    }
    m_told.accessoriesOut = out;
}

bool HandOverSpace::isShort() const
{
    const bool fragments = m_told.fragmentsOut && *m_told.fragmentsOut < fragmentsIn();
    const bool accessories = m_told.accessoriesOut && *m_told.accessoriesOut < accessoriesIn();
    return fragments || accessories;
}

QStringList HandOverSpace::open() const
{
    QStringList open;
    const auto ask = [&](bool isOpen, const QString& words) {
        if (isOpen) {
            open += words;
        }
    };
    ask(!m_told.fragmentsOut, tr("Count the fragments."));
    ask(accessoriesIn() > 0 && !m_told.accessoriesOut, tr("Tick what came with it."));
    ask(isShort() && m_told.missing.empty(), tr("Say what becomes of that which is missing."));
    ask(has(Against::WorkToDo) && m_told.unmended.empty(), tr("Say why it goes back unmended."));
    ask(has(Against::WaitNotOver) && m_told.waitReason.empty(), tr("Say why it goes before its wait is over."));
    ask(has(Against::MoneyOwed) && !m_owedAnswered, tr("Say what becomes of the money that is owed."));
    ask(m_told.takenBy.empty(), tr("Say who takes it."));
    ask(m_told.signedHow.empty(), tr("Have it signed for."));
    return open;
}

Sheet HandOverSpace::listSheet()
{
    Sheet sheet;
    if (!m_now) {
        sheet.title = tr("Hand-over");
        return sheet;
    }
    sheet.title = tr("Hand over: %1").arg(service::isolated(text(m_now->file.piece.benchName)));
    sheet.beside = service::numberWords(m_now->file.piece.number);
    if (!m_said.isEmpty()) {
        sheet.say(m_said, Sheet::Tone::Grave);
    }
    sayPiece(sheet);
    if (m_done) {
        return sheet;
    }
    askFragments(sheet);
    askAccessories(sheet);
    if (isShort()) {
        askMissing(sheet);
    }
    if (isNarrow()) {
        sheet.add(Sheet::Choices{
            {}, {{QStringLiteral("handover/see/who"), tr("Then: who takes it"), {}, [this] { openPage(); }, true}}});
    }
    return sheet;
}

void HandOverSpace::sayPiece(Sheet& sheet) const
{
    Sheet::Pictures pictures;
    pictures.side = 116;
    for (const char* purpose : {record::conditionPhoto, record::finishedPhoto}) {
        for (const store::NotedPhoto& each : m_now->file.photos) {
            const auto small = m_now->small.find(each.use.photo);
            if (each.use.purpose == purpose && pictures.pictures.size() < 6) {
                const QString when = purpose == record::conditionPhoto ? tr("as it came") : tr("as it goes");
                pictures.pictures.push_back({QStringLiteral("handover/photo/%1").arg(pictures.pictures.size()),
                                             small == m_now->small.end() ? QImage() : small->second, when});
            }
        }
    }
    if (!pictures.pictures.empty()) {
        sheet.add(std::move(pictures));
    }
    sheet.add(Sheet::Row{QStringLiteral("handover/words/owner"), tr("Whose it is"), text(m_now->file.owner.contact),
                         m_now->file.owner.isErased() ? tr("erased at their wish")
                                                      : service::isolated(text(m_now->file.owner.name))});
    if (const auto collectable = m_now->facts.collectable) {
        sheet.say(m_now->facts.isWaitOver
                      ? tr("May be collected.")
                      : tr("May be collected from %1.").arg(service::dayWords(*collectable, m_manner)));
    }
}

void HandOverSpace::askFragments(Sheet& sheet)
{
    const int in = fragmentsIn();
    sheet.head(in == 1 ? tr("1 fragment came in") : tr("%1 fragments came in").arg(in));
    const auto told = [this](const QString& typed) {
        bool good = false;
        const int count = typed.trimmed().toInt(&good);
        m_fragments = typed;
        m_told.fragmentsOut = good && count >= 0 && count <= mostFragments ? std::optional(count) : std::nullopt;
        refresh();
    };
    const bool all = m_told.fragmentsOut == in;
    sheet.add(Sheet::Choices{{},
                             {{QStringLiteral("handover/fragments/all"), tr("All of them go out"),
                               tr("joined or in the bag"), [told, in] { told(QString::number(in)); }, false, all}}});
    const bool isWrong = !m_fragments.trimmed().isEmpty() && !m_told.fragmentsOut;
    sheet.add(Sheet::Field{QStringLiteral("fragments"), tr("Or so many"), m_fragments, tr("fragments"),
                           isWrong ? tr("A whole number from 0 to %1.").arg(mostFragments)
                           : m_told.fragmentsOut && *m_told.fragmentsOut > in
                               ? tr("More go out than came in: is a fragment of another piece among them?")
                               : QString(),
                           told});
}

void HandOverSpace::askAccessories(Sheet& sheet)
{
    const auto& all = m_now->facts.accessoryList;
    if (all.empty()) {
        return;
    }
    sheet.head(tr("What came with it"));
    for (std::size_t i = 0; i < all.size(); ++i) {
        const QString what =
            all[i].count == 1 ? text(all[i].what) : tr("%1 (%2)").arg(text(all[i].what)).arg(all[i].count);
        sheet.add(Sheet::Row{QStringLiteral("handover/accessory/%1").arg(i),
                             what,
                             {},
                             m_goes[i] ? tr("goes out") : tr("tap when it is there"),
                             [this, i] {
                                 m_goes[i] = !m_goes[i];
                                 countAccessories();
                                 refresh();
                             },
                             m_goes[i]});
    }
    if (!m_told.accessoriesOut) {
        sheet.add(Sheet::Choices{{}, {{QStringLiteral("handover/accessory/none"), tr("None of it is here"), {}, [this] {
                                           countAccessories();
                                           refresh();
                                       }}}});
    }
}

Sheet::Choice HandOverSpace::answer(const QString& key, const QString& words, std::string HandingOver::*part)
{
    return {key,
            words,
            {},
            [this, words, part] {
                m_told.*part = words.toStdString();
                refresh();
            },
            false,
            m_told.*part == words.toStdString()};
}

void HandOverSpace::askMissing(Sheet& sheet)
{
    const int fragments = m_told.fragmentsOut ? std::max(0, fragmentsIn() - *m_told.fragmentsOut) : 0;
    const int accessories = m_told.accessoriesOut ? std::max(0, accessoriesIn() - *m_told.accessoriesOut) : 0;
    QStringList words;
    if (fragments > 0) {
        words += fragments == 1 ? tr("1 fragment is missing") : tr("%1 fragments are missing").arg(fragments);
    }
    if (accessories > 0) {
        words += accessories == 1 ? tr("1 thing that came with it is missing")
                                  : tr("%1 things that came with it are missing").arg(accessories);
    }
    sheet.say(service::joined(words), Sheet::Tone::Grave);
    sheet.add(Sheet::Choices{
        tr("What becomes of it"),
        {answer(QStringLiteral("handover/missing/stays"), tr("It stays here and is looked for"), &HandingOver::missing),
         answer(QStringLiteral("handover/missing/known"), tr("The owner knows that it is lost"), &HandingOver::missing),
         answer(QStringLiteral("handover/missing/fill"), tr("A fill took its place"), &HandingOver::missing)}});
    sheet.add(Sheet::Field{QStringLiteral("missing"),
                           tr("Or in your own words"),
                           text(m_told.missing),
                           {},
                           {},
                           [this](const QString& typed) {
                               m_told.missing = typed.toStdString();
                               refresh();
                           }});
}

Sheet HandOverSpace::pageSheet()
{
    if (!m_now) {
        return {};
    }
    if (m_done) {
        return doneSheet();
    }
    Sheet sheet;
    sheet.title = tr("Who takes it");
    if (!isNarrow()) {
        sheet.back = {QStringLiteral("handover/see/leave"), tr("Not now"), {}, [this] { Q_EMIT leaveWanted(); }};
    }
    askWait(sheet);
    askMoney(sheet);
    askWho(sheet);
    offerDone(sheet);
    return sheet;
}

void HandOverSpace::askWait(Sheet& sheet)
{
    if (has(Against::WorkToDo)) {
        sheet.say(tr("Work on it is still to do. It can only go back unmended."), Sheet::Tone::Grave);
        sheet.add(Sheet::Choices{
            tr("Because"),
            {answer(QStringLiteral("handover/unmended/owner"), tr("The owner wants it back"), &HandingOver::unmended),
             answer(QStringLiteral("handover/unmended/cannot"), tr("It cannot be mended"), &HandingOver::unmended),
             answer(QStringLiteral("handover/unmended/price"), tr("No price was agreed"), &HandingOver::unmended)}});
        sheet.add(Sheet::Field{QStringLiteral("unmended"),
                               tr("Or in your own words"),
                               text(m_told.unmended),
                               {},
                               {},
                               [this](const QString& typed) {
                                   m_told.unmended = typed.toStdString();
                                   refresh();
                               }});
        return;
    }
    if (!has(Against::WaitNotOver)) {
        return;
    }
    const QString until =
        m_now->facts.collectable ? service::dayWords(*m_now->facts.collectable, m_manner) : tr("its wait is over");
    sheet.say(m_now->material.isEmpty() ? tr("Not before %1.").arg(until)
                                        : tr("Not before %1: its %2 wants that long.").arg(until, m_now->material),
              Sheet::Tone::Grave);
    sheet.add(Sheet::Choices{
        tr("It goes all the same, because"),
        {answer(QStringLiteral("handover/early/still"), tr("The owner lets it stand untouched until then"),
                &HandingOver::waitReason),
         answer(QStringLiteral("handover/early/show"), tr("It is only to be looked at"), &HandingOver::waitReason)}});
    sheet.add(Sheet::Field{QStringLiteral("early"),
                           tr("Or in your own words"),
                           text(m_told.waitReason),
                           {},
                           {},
                           [this](const QString& typed) {
                               m_told.waitReason = typed.toStdString();
                               refresh();
                           }});
}

void HandOverSpace::askMoney(Sheet& sheet)
{
    const bench::Owed& owed = m_now->facts.owed;
    if (!owed.price) {
        return;
    }
    const Money left = owed.left.value_or(*owed.price);
    if (left.minorUnits() <= 0) {
        sheet.say(tr("Paid: %1. Nothing is owed.").arg(service::moneyWords(*owed.price, m_manner)));
        return;
    }
    sheet.say(
        tr("%1 of %2 is owed.").arg(service::moneyWords(left, m_manner), service::moneyWords(*owed.price, m_manner)),
        Sheet::Tone::Grave);
    const bool paid = m_told.paid.has_value();
    const QString stays = tr("The rest is paid later");
    sheet.add(Sheet::Choices{{},
                             {{QStringLiteral("handover/paid"), tr("Paid now"), service::moneyWords(left, m_manner),
                               [this, left] {
                                   m_told.paid = left;
                                   m_told.owedReason.clear();
                                   m_owedAnswered = true;
                                   refresh();
                               },
                               false, paid},
                              {QStringLiteral("handover/owed"), tr("Stays owed"), stays,
                               [this, stays] {
                                   m_told.paid.reset();
                                   m_told.owedReason = stays.toStdString();
                                   m_owedAnswered = true;
                                   refresh();
                               },
                               false, m_owedAnswered && !paid}}});
}

void HandOverSpace::askWho(Sheet& sheet)
{
    const QString owner = text(m_now->file.owner.name);
    if (!owner.isEmpty()) {
        sheet.add(
            Sheet::Choices{{},
                           {{QStringLiteral("handover/who/owner"), tr("The owner takes it"), service::isolated(owner),
                             [this, owner] {
                                 m_told.takenBy = owner.toStdString();
                                 refresh();
                             },
                             false, m_told.takenBy == owner.toStdString()}}});
    }
    sheet.add(Sheet::Field{QStringLiteral("takenBy"),
                           tr("Or somebody else: their name"),
                           text(m_told.takenBy),
                           {},
                           m_tried && m_told.takenBy.empty() ? tr("Who takes it?") : QString(),
                           [this](const QString& typed) {
                               m_told.takenBy = typed.simplified().toStdString();
                               refresh();
                           }});
    const bool onPaper = m_told.signedHow == "onPaper";
    if (!onPaper) {
        sheet.add(Sheet::Inset{QStringLiteral("signature"), 150});
    }
    Sheet::Choices how;
    how.choices.push_back({QStringLiteral("handover/onpaper"),
                           tr("Signed on paper"),
                           {},
                           [this, onPaper] {
                               m_told.signedHow = onPaper ? "" : "onPaper";
                               refresh();
                           },
                           false,
                           onPaper});
    if (!onPaper && !m_pad->isEmpty()) {
        how.choices.push_back({QStringLiteral("handover/wipe"), tr("Sign again"), {}, [this] { m_pad->clear(); }});
    }
    sheet.add(std::move(how));
}

void HandOverSpace::offerDone(Sheet& sheet)
{
    const QStringList left = open();
    if (m_tried) {
        for (const QString& words : left) {
            sheet.say(words, Sheet::Tone::Grave);
        }
    }
    const bool unmended = !m_told.unmended.empty();
    sheet.add(Sheet::Choices{{},
                             {{QStringLiteral("handover/done"),
                               unmended ? tr("Given back unmended") : tr("Handed over"),
                               {},
                               [this] {
                                   m_tried = true;
                                   if (open().isEmpty()) {
                                       Q_EMIT handedOver(m_told,
                                                         m_told.signedHow == "drawn" ? m_pad->picture() : QImage());
                                   }
                                   refresh();
                               },
                               true}},
                             true});
}

Sheet HandOverSpace::doneSheet()
{
    Sheet sheet;
    sheet.title = m_done->words;
    sheet.beside = m_done->isStored ? tr("stands in the file") : tr("not stored yet");
    if (m_done->canUndo) {
        sheet.add(Sheet::Choices{{},
                                 {{QStringLiteral("handover/undo"), tr("Take it back"), tr("for ten seconds"),
                                   [this] { Q_EMIT undoWanted(); }}}});
    }
    sheet.head(tr("What goes with it on paper"));
    sheet.add(Sheet::Choices{{},
                             {{QStringLiteral("handover/see/paper/all"),
                               tr("Write them all"),
                               {},
                               [this] { Q_EMIT paperWanted(QStringLiteral("all")); },
                               true}}});
    for (const HandedOver::Paper& paper : m_done->papers) {
        sheet.add(Sheet::Row{QStringLiteral("handover/see/paper/") + paper.key, paper.title, paper.written,
                             tr("Write it"), [this, key = paper.key] { Q_EMIT paperWanted(key); }});
    }
    sheet.add(Sheet::Choices{
        {},
        {{QStringLiteral("handover/see/bench"), tr("Back to the bench"), {}, [this] { Q_EMIT leaveWanted(); }, true}},
        true});
    return sheet;
}

} // namespace mend::app
