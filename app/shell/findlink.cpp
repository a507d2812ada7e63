#include "app/shell/findlink.h"

#include "app/parts/outline.h"
#include "core/bench/handover.h"
#include "core/record/piecenumber.h"
#include "core/service/doorwording.h"

#include <QImage>
#include <algorithm>

namespace mend::app {

using service::text;

namespace {

/// A number as a tag has it, whole, whatever is between its digits; its check character may be wrong.
bool looksLikeNumber(const QString& typed)
{
    QString bare = typed.toUpper();
    bare.remove(QLatin1Char('-')).remove(QLatin1Char(' '));
    constexpr int whole = 7;
    return bare.size() == whole && std::ranges::all_of(bare.first(whole - 1), [](QChar c) {
               return c >= QLatin1Char('0') && c <= QLatin1Char('9');
           });
}

QString wrongNumberWords(const QString& typed)
{
    return FindLink::tr("%1 is no piece number: one digit is wrong, or two are swapped.").arg(typed.trimmed());
}

QString accessoryWords(const std::vector<record::Accessory>& all)
{
    QStringList words;
    for (const record::Accessory& each : all) {
        words << (each.count == 1 ? text(each.what) : QStringLiteral("%1 %2").arg(each.count).arg(text(each.what)));
    }
    return service::joined(words);
}

} // namespace

FindLink::FindLink(Services services, FindSpace& space, QObject* parent)
    : QObject(parent), m_services(services), m_space(space)
{
    connect(&space, &FindSpace::asked, this, &FindLink::ask);
    connect(&space, &FindSpace::personChosen, this, &FindLink::openPerson);
    connect(&space, &FindSpace::pieceChosen, this, &FindLink::openPiece);
    connect(&space, &FindSpace::pieceWanted, this, &FindLink::pieceWanted);
}

void FindLink::show()
{
    const bench::CounterFacts facts = m_services.door.counter();
    std::vector<FindList> lists;
    const auto add = [&](const char* key, const QString& words, const std::vector<bench::CounterLine>& lines) {
        if (!lines.empty()) {
            lists.push_back({QString::fromLatin1(key), words, linesOf(lines)});
        }
    };
    add("collect", service::mayBeCollectedWords(facts), facts.mayBeCollected);
    add("late", service::lateWords(facts), facts.late);
    add("waits", service::waitsForOwnerWords(facts), facts.waitsForOwner);
    add("call", service::toCallWords(facts), facts.toCall);
    add("unclaimed", service::unclaimedWords(facts), facts.unclaimed);
    const int house = static_cast<int>(m_services.bench.bench().pieces.size());
    m_space.setLists(house == 1 ? tr("1 piece in the house") : tr("%n pieces in the house", nullptr, house),
                     std::move(lists));
}

std::vector<FindPiece> FindLink::linesOf(const std::vector<bench::CounterLine>& lines) const
{
    const bench::Roster& roster = m_services.bench.bench().roster;
    std::vector<FindPiece> pieces;
    for (const bench::CounterLine& line : lines) {
        const record::Piece* const piece = roster.piece(line.piece);
        if (!piece) {
            continue;
        }
        const record::Customer* const owner = roster.customer(piece->owner);
        FindPiece found = lineOf(*piece, owner ? text(owner->name) : QString(), true);
        pieces.push_back(std::move(found));
    }
    return pieces;
}

double FindLink::mendedOf(PieceId piece) const
{
    const bench::PieceState* const state = m_services.bench.bench().piece(piece);
    return state ? bench::mendedShare(*state, m_services.bench.book()) : 1.0;
}

QString FindLink::stateOf(PieceId piece) const
{
    const bench::PieceState* const state = m_services.bench.bench().piece(piece);
    return state ? service::progressWords(*state, m_services.bench.book(), now(), dayOf(), m_manner)
                 : tr("no longer in the house");
}

FindPiece FindLink::lineOf(const record::Piece& piece, const QString& owner, bool inHand) const
{
    FindPiece line;
    line.id = piece.id;
    line.name = text(piece.benchName);
    line.number = service::numberWords(piece.number);
    line.owner = owner;
    line.state = inHand ? stateOf(piece.id) : tr("no longer in the house");
    line.outside = text(piece.looks);
    line.sight = {parts::shapeFor(line.name, text(piece.number).toLongLong()), mendedOf(piece.id), {}};
    return line;
}

void FindLink::ask(const QString& typed)
{
    m_services.door.find(typed.toStdString(), [this, typed](const Result<store::Found>& found) {
        FindAnswer answer;
        answer.typed = typed;
        if (!found) {
            answer.note = tr("The file does not answer just now: try again in a moment.");
            m_space.setAnswer(std::move(answer));
            return;
        }
        for (const store::FoundPiece& each : found.value().pieces) {
            answer.pieces.push_back(lineOf(each.piece, text(each.owner.name), each.inHand));
        }
        for (const store::FoundPerson& each : found.value().people) {
            answer.people.push_back({each.person.id, text(each.person.name), text(each.person.contact)});
        }
        answer.sure = !found.value().pieces.empty() && found.value().pieces.front().apart == 0;
        if (looksLikeNumber(typed) && !record::readPieceNumber(typed.toStdString()) && answer.people.empty()) {
            answer.note = answer.pieces.empty() ? wrongNumberWords(typed)
                                                : tr("%1 These are near it:").arg(wrongNumberWords(typed));
        }
        m_space.setAnswer(std::move(answer));
    });
}

void FindLink::scanned(const QString& typed)
{
    const auto number = record::readPieceNumber(typed.toStdString());
    if (!number) {
        m_space.put(typed, wrongNumberWords(typed));
        Q_EMIT findWanted();
        return;
    }
    m_services.door.find(*number, [this, number = *number](const Result<store::Found>& found) {
        const auto whole = [&](const store::FoundPiece& each) { return each.piece.number == number; };
        if (found) {
            if (const auto at = std::ranges::find_if(found.value().pieces, whole); at != found.value().pieces.end()) {
                m_space.put(service::numberWords(number), {});
                Q_EMIT pieceWanted(at->piece.id);
                return;
            }
        }
        const QString shown = service::numberWords(number);
        m_space.put(shown, tr("No piece in this file has the number %1.").arg(shown));
        Q_EMIT findWanted();
    });
}

void FindLink::openPerson(CustomerId person)
{
    m_services.door.openPerson(person, [this](const Result<service::PersonFile>& file) {
        if (!file) {
            return;
        }
        FindAnswer answer;
        answer.typed = m_space.typed();
        answer.whose = text(file.value().person.name);
        for (const service::PieceFile& piece : file.value().pieces) {
            const bool inHand = m_services.bench.bench().piece(piece.piece.id);
            answer.pieces.push_back(lineOf(piece.piece, answer.whose, inHand));
        }
        m_space.setAnswer(std::move(answer));
    });
}

void FindLink::openPiece(PieceId piece)
{
    m_services.door.openPiece(piece, [this](const Result<service::PieceFile>& file) {
        if (!file) {
            return;
        }
        const FindPage page = pageOf(file.value());
        m_space.setPage(page);
        if (file.value().photos.empty()) {
            return;
        }
        m_services.door.readThumbnail(
            file.value().photos.front().use.photo, [this, page](const Result<std::optional<store::Bytes>>& bytes) {
                FindPage seen = page;
                if (bytes && bytes.value()) {
                    seen.piece.sight.photo = QImage::fromData(QByteArray::fromStdString(*bytes.value()));
                    m_space.setPage(std::move(seen));
                }
            });
    });
}

FindPage FindLink::pageOf(const service::PieceFile& file) const
{
    const bench::PieceState* const state = m_services.bench.bench().piece(file.piece.id);
    const service::HandOverFacts facts = service::handOverFacts(file, state, m_services.bench.book(), now(), dayOf());
    FindPage page;
    page.piece = lineOf(file.piece, text(file.owner.name), state);
    page.contact = text(file.owner.contact);
    const int fragments = facts.fragments.in.value_or(file.piece.fragments);
    page.cameIn =
        service::joined({fragments == 1 ? tr("1 fragment came in") : tr("%n fragments came in", nullptr, fragments),
                         accessoryWords(facts.accessoryList)});
    page.inHouse = state != nullptr;
    addFacts(page, file, facts);
    if (state && facts.promise) {
        const auto judged = m_services.door.judgePromise(file.piece.id, facts.promise->day);
        if (judged.daysTooEarly > 0 && judged.earliest) {
            const rules::Material* const material = m_services.bench.book().material(judged.material);
            page.grave = tr("Promised for %1, but it may not be collected before %2.")
                             .arg(service::dayWords(facts.promise->day, m_manner),
                                  service::dayWords(*judged.earliest, m_manner));
            page.because = material ? tr("Its %1 waits so long. Call the owner.").arg(text(material->name))
                                    : tr("The work takes so long. Call the owner.");
        }
    }
    if (state && !facts.isWaitOver) {
        page.notYet = facts.from ? tr("not yet: it still waits") : tr("not yet: work is to do");
    }
    return page;
}

void FindLink::addFacts(FindPage& page, const service::PieceFile& file, const service::HandOverFacts& facts) const
{
    const bench::VisitFacts& visit = file.dossier.now();
    const auto add = [&](const QString& label, const QString& value) {
        if (!value.isEmpty()) {
            page.facts.push_back({label, value});
        }
    };
    const auto day = [&](const std::optional<Instant>& at) {
        return at ? service::dayWords(dayOf()(*at), m_manner) : QString();
    };
    const rules::Procedure* const procedure = m_services.bench.book().procedure(file.piece.procedure);
    add(tr("Mended by"), procedure ? text(procedure->name) : QString());
    add(tr("Came in"), day(visit.receivedAt));
    if (visit.handedOver) {
        add(tr("Handed over"), day(visit.handedOver->at));
    } else if (visit.returnedUnmended) {
        add(tr("Went back unmended"), day(visit.returnedUnmended));
    } else {
        add(tr("Promised for"), facts.promise ? service::dayWords(facts.promise->day, m_manner) : tr("no day"));
        add(tr("May be collected from"),
            facts.collectable ? service::dayWords(*facts.collectable, m_manner) : QStringLiteral("–"));
    }
    if (facts.owed.left && facts.owed.price) {
        add(tr("Owed"), tr("%1 of %2")
                            .arg(service::moneyWords(*facts.owed.left, m_manner),
                                 service::moneyWords(*facts.owed.price, m_manner)));
    } else if (facts.owed.price) {
        add(tr("Agreed price"), service::moneyWords(*facts.owed.price, m_manner));
    }
}

} // namespace mend::app
