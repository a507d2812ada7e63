#include "tests/day/record.h"

#include <QProcess>

namespace mend::test {

namespace {

/// The kinds of events, as the file's format numbers them for ever (core/bench/event.h); 24 is told apart by its word.
constexpr auto askForTold = R"(
with named as (
    select event.*, case what
        when 1 then 'begun' when 2 then 'done' when 3 then 'notYet' when 4 then 'skipped' when 5 then 'sentBack'
        when 6 then 'missed' when 7 then 'doingLate' when 9 then 'placed' when 10 then 'mix' when 11 then 'mixEnded'
        when 13 then 'reading' when 14 then 'gap' when 15 then 'hold' when 16 then 'holdEnded' when 19 then 'overridden'
        when 22 then 'handedOver' when 24 then 'answered' when 28 then 'void' when 29 then 'retold'
        else 'what' || what end as kind
    from event),
worded as (
    select named.*, kind || case
        when what = 13 then printf(' %g', temperature_cc / 100.0) ||
                            case when humidity_cp is null then '' else printf(' %g', humidity_cp / 100.0) end
        when what = 9 then ' ' || (select name from place where place.id = named.place)
        when what = 24 then ' ' || substr(word, instr(word, '|') + 1)
        when stage <> '' then ' ' || stage || '#' || repetition
        when word <> '' then ' ' || word else '' end as said
    from named)
select worded.id, coalesce(piece.bench_name, place.name, ''),
       worded.said || case when what = 28 then ' ' || (select said from worded as gone where gone.id = worded.target)
                      else '' end,
       happened, recorded
from worded left join piece on piece.id = worded.piece left join place on place.id = worded.place
where worded.id > %1 and not (what = 24 and word like '%|shown') order by worded.id;
)";

constexpr auto askForCalls = R"(
select event.id, piece.bench_name, stage || '#' || repetition, happened, recorded
from event join piece on piece.id = event.piece
where event.id > %1 and what = 24 and word like '%/closes@%|shown' order by event.id;
)";

// Of the mode -ascii: what stands between columns, and at the end of a row.
constexpr QChar columnEnd(0x1f);
constexpr QChar rowEnd(0x1e);

/// The answer row by row; empty also where the program is writing just now.
QList<QStringList> ask(const QString& file, const QString& query)
{
    QProcess sqlite;
    sqlite.start(QStringLiteral("sqlite3"), {QStringLiteral("-readonly"), QStringLiteral("-ascii"),
                                             QStringLiteral("-cmd"), QStringLiteral(".timeout 2000"), file, query});
    QList<QStringList> rows;
    if (!sqlite.waitForFinished(10'000) || sqlite.exitCode() != 0) {
        return rows;
    }
    const QStringList lines = QString::fromUtf8(sqlite.readAllStandardOutput()).split(rowEnd, Qt::SkipEmptyParts);
    for (const QString& line : lines) {
        rows << line.split(columnEnd);
    }
    return rows;
}

std::vector<Recorded> recorded(const QString& file, const char* query, qint64 event)
{
    std::vector<Recorded> all;
    const auto rows = ask(file, QString::fromUtf8(query).replace(QLatin1String("%1"), QString::number(event)));
    for (const QStringList& row : rows) {
        if (row.size() == 5) {
            all.push_back({row[0].toLongLong(), row[1], row[2], row[3], row[4]});
        }
    }
    return all;
}

} // namespace

std::vector<Recorded> recordSince(const QString& file, qint64 event) { return recorded(file, askForTold, event); }

std::vector<Recorded> callsSince(const QString& file, qint64 event) { return recorded(file, askForCalls, event); }

qint64 lastEvent(const QString& file)
{
    const auto rows = ask(file, QStringLiteral("select max(id) from event"));
    return rows.size() == 1 ? rows.front().front().toLongLong() : -1;
}

} // namespace mend::test
