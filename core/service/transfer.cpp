#include "core/service/transfer.h"

#include "core/bench/counter.h"
#include "core/exchange/calendar.h"
#include "core/exchange/flattable.h"
#include "core/record/piecenumber.h"
#include "core/service/openbench.h"
#include "core/service/piecefile.h"
#include "core/service/rowsof.h"
#include "core/store/bulk.h"

#include <QCoreApplication>
#include <fstream>
#include <map>

namespace mend::service {

namespace fs = std::filesystem;

namespace {

Fault unwritable(const fs::path& file) { return {FaultKind::Unwritable, file.filename().string()}; }

/// A file that gets its name once it is whole and on the disk; what was written is removed else.
class NewFile {
public:
    explicit NewFile(fs::path to) : m_to(std::move(to)), m_half(m_to.native() + ".unfinished")
    {
        m_stream.open(m_half, std::ios::binary | std::ios::trunc);
        if (m_stream) {
            store::makePrivate(m_half).isOk();
        }
    }
    ~NewFile()
    {
        if (!m_named) {
            m_stream.close();
            std::error_code ignored;
            fs::remove(m_half, ignored);
        }
    }
    NewFile(const NewFile&) = delete;
    NewFile& operator=(const NewFile&) = delete;

    std::ostream& stream() { return m_stream; }
    Outcome finish()
    {
        m_stream.close();
        if (!m_stream || !store::syncToDisk(m_half)) {
            return unwritable(m_to);
        }
        std::error_code failed;
        fs::rename(m_half, m_to, failed);
        m_named = !failed;
        return m_named && store::syncToDisk(fs::absolute(m_to).parent_path()) ? Outcome(Done{})
                                                                              : Outcome(unwritable(m_to));
    }

private:
    fs::path m_to;
    fs::path m_half;
    std::ofstream m_stream;
    bool m_named = false;
};

fs::path picturesOf(const fs::path& file) { return file.native() + ".pictures"; }

std::optional<store::Bytes> bytesOf(const fs::path& file)
{
    std::ifstream stream(file, std::ios::binary);
    if (!stream) {
        return std::nullopt;
    }
    return store::Bytes(std::istreambuf_iterator<char>(stream), {});
}

Outcome writeBytes(const fs::path& file, const store::Bytes& bytes)
{
    NewFile made(file);
    made.stream() << bytes;
    return made.finish();
}

/// Writes those pictures beside the export that are not there yet.
Outcome writePictures(const store::Store& store, const std::set<std::string>& hashes, const fs::path& to,
                      Transferred& done)
{
    if (hashes.empty()) {
        return Done{};
    }
    const fs::path folder = picturesOf(to);
    if (const Outcome made = store::makePrivateFolder(folder); !made) {
        return made;
    }
    for (const std::string& hash : hashes) {
        const auto bytes = store.photo(hash);
        const auto small = store.thumbnail(hash);
        if (!bytes || !bytes.value()) {
            done.missingPictures.push_back(hash);
            continue;
        }
        ++done.pictures;
        if (fs::exists(folder / hash)) {
            continue;
        }
        const store::Bytes thumbnail = small ? small.value().value_or("") : store::Bytes();
        if (const Outcome written = writeBytes(folder / (hash + ".small"), thumbnail); !written) {
            return written;
        }
        if (const Outcome written = writeBytes(folder / hash, *bytes.value()); !written) {
            return written;
        }
    }
    return Done{};
}

template <class Rows>
Result<Transferred> exportRows(const store::Store& store, const char* format, const fs::path& to, Rows rows)
{
    Transferred done;
    std::set<std::string> pictures;
    NewFile file(to);
    exchange::RowFileWriter writer(file.stream(), format);
    const Outcome read = rows([&](exchange::FileRow row) {
        if (const record::Sheet* const photo = row.parts.member("photo"); photo && row.kind == "photo") {
            pictures.insert(photo->text);
        }
        writer.write(row);
        ++done.rows;
    });
    if (!read) {
        return read.fault();
    }
    writer.end();
    if (const Outcome written = writePictures(store, pictures, to, done); !written) {
        return written.fault();
    }
    if (const Outcome written = file.finish(); !written) {
        return written.fault();
    }
    return done;
}

Outcome readInto(std::istream& in, const fs::path& pictures, store::Bulk& bulk, Transferred& done)
{
    RowsInto into(bulk, [&pictures](const std::string& hash, bool thumbnail) {
        return bytesOf(pictures / (thumbnail ? hash + ".small" : hash));
    });
    exchange::RowFileReader reader(in, exchange::wholeExport);
    for (;;) {
        auto row = reader.next();
        if (!row) {
            return row.fault();
        }
        if (!row.value()) {
            break;
        }
        if (const Outcome taken = into.take(*row.value()); !taken) {
            return Fault{taken.fault().kind, "line " + std::to_string(reader.line()) + ": " + taken.fault().detail};
        }
    }
    const Outcome finished = into.finish();
    done.rows = into.rows();
    done.missingPictures = into.missingPictures();
    return finished;
}

} // namespace

Result<Transferred> exportWhole(const store::Store& store, const fs::path& to)
{
    return exportRows(store, exchange::wholeExport, to, [&](const TakeRow& take) { return rowsOf(store, take); });
}

Result<Transferred> exportPerson(const store::Store& store, CustomerId person, const fs::path& to)
{
    return exportRows(store, exchange::personExport, to,
                      [&](const TakeRow& take) { return rowsOfPerson(store, person, take); });
}

Result<Transferred> importWhole(const fs::path& from, const fs::path& to)
{
    std::error_code failed;
    if (fs::exists(to, failed)) {
        return Fault{FaultKind::Conflict, "a file stands there already"};
    }
    std::ifstream in(from, std::ios::binary);
    if (!in || fs::is_directory(from, failed)) {
        return Fault{FaultKind::NotFound, "no such export"};
    }
    const fs::path half = to.native() + ".unfinished";
    fs::remove(half, failed);
    Transferred done;
    Outcome filled = Done{};
    {
        store::OpenOptions options;
        options.mode = store::OpenMode::CreateIfMissing;
        auto opened = store::Store::open(half, options);
        if (!opened) {
            return opened.fault();
        }
        filled = opened.value()->fill([&](store::Bulk& bulk) { return readInto(in, picturesOf(from), bulk, done); });
    }
    const Outcome named = filled ? store::renameIfFree(half, to) : filled;
    fs::remove(half, failed);
    if (!named) {
        return named.fault();
    }
    return done;
}

Result<Transferred> exportTables(const store::Store& store, const fs::path& folder)
{
    std::map<std::string, std::vector<record::Sheet>> tables;
    Transferred done;
    const Outcome read = rowsOf(store, [&](exchange::FileRow row) {
        tables[row.kind].push_back(std::move(row.parts));
        ++done.rows;
    });
    if (!read) {
        return read.fault();
    }
    if (const Outcome made = store::makePrivateFolder(folder); !made) {
        return made.fault();
    }
    for (const auto& [kind, sheets] : tables) {
        NewFile file(folder / (kind + ".csv"));
        exchange::writeFlatTable(file.stream(), sheets);
        if (const Outcome written = file.finish(); !written) {
            return written.fault();
        }
    }
    return done;
}

Result<Transferred> exportCalendar(const store::Store& store, RuleShelf& shelf, const fs::path& to, Instant now)
{
    const auto open = readBench(store, shelf, now);
    if (!open) {
        return open.fault();
    }
    const OpenBench& held = open.value();
    const bench::BenchFold bench = bench::fold(held.record.roster, held.record.events, held.book);
    const bench::DayOf dayOf = dayIn(held.studio.timeZone());
    std::vector<exchange::CalendarDay> days;
    const auto say = [](const char* words, const std::string& number) {
        return QCoreApplication::translate("Calendar", words)
            .arg(QString::fromStdString(record::shownPieceNumber(number)))
            .toStdString();
    };
    for (const auto& [id, piece] : bench.pieces) {
        const std::string& number = piece.piece.number;
        if (const auto promise = bench::dossierOf(id, held.record.events, held.book).now().promise()) {
            days.push_back(
                {number + "-promised", promise->day, say(QT_TRANSLATE_NOOP("Calendar", "%1 is promised"), number)});
        }
        if (const auto from = bench::handOverFrom(piece, held.book)) {
            days.push_back({number + "-ready", bench::collectableDay(from->at, dayOf),
                            say(QT_TRANSLATE_NOOP("Calendar", "%1 may be collected"), number)});
        }
    }
    NewFile file(to);
    exchange::writeCalendar(file.stream(), days, now);
    if (const Outcome written = file.finish(); !written) {
        return written.fault();
    }
    Transferred done;
    done.rows = static_cast<std::int64_t>(days.size());
    return done;
}

Result<exchange::PeopleList> readPeople(const fs::path& from)
{
    std::ifstream in(from, std::ios::binary);
    std::error_code failed;
    if (!in || fs::is_directory(from, failed)) {
        return Fault{FaultKind::NotFound, "no such list"};
    }
    return from.extension() == ".csv" ? exchange::readPeopleTable(in) : exchange::readVcards(in);
}

} // namespace mend::service
