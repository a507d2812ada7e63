// The pages of the Piece space that are about photos.
#include "app/piece/piecespace.h"

#include "app/parts/folderrows.h"
#include "core/service/doorwording.h"

#include <algorithm>
#include <array>

namespace mend::app {

using parts::Sheet;
using service::text;

namespace {

constexpr std::size_t mostMarks = 99;

struct PurposeWord {
    const char* key;
    const char* words;
};
constexpr std::array<PurposeWord, 3> purposes{
    {{record::conditionPhoto, QT_TRANSLATE_NOOP("mend::app::PieceSpace", "Before")},
     {record::duringPhoto, QT_TRANSLATE_NOOP("mend::app::PieceSpace", "During")},
     {record::finishedPhoto, QT_TRANSLATE_NOOP("mend::app::PieceSpace", "After")}}};
constexpr std::array marks{record::MarkKind::Chip, record::MarkKind::Crack, record::MarkKind::Loss,
                           record::MarkKind::OldMend, record::MarkKind::Stain};

} // namespace

Sheet PieceSpace::photosSheet()
{
    Sheet sheet;
    sheet.title = tr("Photos");
    sheet.beside = tr("kept upright, without the place they were taken at");
    for (const PurposeWord& each : purposes) {
        photosOf(sheet, each.key, tr(each.words));
    }
    sheet.head(tr("Add photos"));
    Sheet::Choices when;
    when.label = tr("What they show");
    for (const PurposeWord& each : purposes) {
        const QString key = QLatin1String(each.key);
        when.choices.push_back({QStringLiteral("home/see/purpose/") + key,
                                tr(each.words),
                                {},
                                [this, key] {
                                    m_purpose = key;
                                    refresh();
                                },
                                false,
                                purpose() == key});
    }
    sheet.add(std::move(when));
    sheet.add(
        Sheet::Choices{{},
                       {{QStringLiteral("home/see/pick"), tr("Choose files"), tr("or drop them here"),
                         [this] { openPage(PiecePage::PickPhotos); }, true},
                        {QStringLiteral("home/paste"), tr("Paste"), tr("a copied picture"), [this] { paste(); }}}});
    return sheet;
}

void PieceSpace::photosOf(Sheet& sheet, const char* purpose, const QString& title)
{
    Sheet::Pictures pictures;
    for (const store::NotedPhoto& each : m_now->file.photos) {
        if (each.use.purpose != purpose) {
            continue;
        }
        const auto small = m_now->small.find(each.use.photo);
        QStringList words;
        if (!each.note.words.empty()) {
            words += text(each.note.words);
        }
        if (!each.note.marks.empty()) {
            const auto count = each.note.marks.size();
            words += count == 1 ? tr("1 mark") : tr("%1 marks").arg(count);
        }
        if (words.isEmpty()) {
            words += each.note.taken ? day(*each.note.taken) : title;
        }
        pictures.pictures.push_back({QStringLiteral("home/see/photo/") + text(each.use.photo),
                                     small == m_now->small.end() ? QImage() : small->second, service::joined(words),
                                     [this, hash = each.use.photo] { openPhoto(hash); }});
    }
    if (!pictures.pictures.empty()) {
        sheet.head(title);
        sheet.add(std::move(pictures));
    }
}

void PieceSpace::openPhoto(const std::string& hash)
{
    openPage(PiecePage::Photo);
    m_photo = hash;
    m_board->setPhoto({});
    const store::NotedPhoto* shown = photo();
    m_words = shown ? text(shown->note.words) : QString();
    Q_EMIT photoWanted(hash);
    refresh();
}

void PieceSpace::setPhoto(const std::string& hash, const QImage& photo)
{
    if (hash == m_photo) {
        m_board->setPhoto(photo);
    }
}

const store::NotedPhoto* PieceSpace::photo() const
{
    if (!m_now) {
        return nullptr;
    }
    const auto found =
        std::ranges::find_if(m_now->file.photos, [this](const auto& each) { return each.use.photo == m_photo; });
    return found == m_now->file.photos.end() ? nullptr : &*found;
}

Sheet PieceSpace::photoSheet()
{
    Sheet sheet;
    const store::NotedPhoto* shown = photo();
    sheet.title = tr("Photo");
    sheet.back = {QStringLiteral("home/see/photos"), tr("All photos"), {}, [this] { openPage(PiecePage::Photos); }};
    if (!shown) {
        return sheet;
    }
    m_board->setMarks(shown->note.marks);
    m_board->setTakesMarks(m_mark.has_value());
    sheet.add(Sheet::Inset{QStringLiteral("photo"), 340, 900});
    Sheet::Choices kinds;
    kinds.label = m_mark ? tr("Tap the place on the photo.") : tr("Mark on it:");
    for (const record::MarkKind kind : marks) {
        const bool chosen = m_mark == kind;
        kinds.choices.push_back({QStringLiteral("home/mark/%1").arg(int(kind)),
                                 service::markWords(kind),
                                 {},
                                 [this, kind, chosen] {
                                     m_mark = chosen ? std::nullopt : std::optional(kind);
                                     m_chosenMark = 0;
                                     refresh();
                                 },
                                 false,
                                 chosen});
    }
    sheet.add(std::move(kinds));
    markRows(sheet, *shown);
    if (m_chosenMark == 0) {
        sheet.add(Sheet::Field{
            QStringLiteral("photoWords"), tr("Words under the photo"), m_words, {}, {}, [this](const QString& typed) {
                m_words = typed;
            }});
        sheet.add(Sheet::Choices{{}, {{QStringLiteral("home/keepwords"), tr("Keep the words"), {}, [this] {
                                           record::PhotoNote note = photo()->note;
                                           note.words = m_words.trimmed().toStdString();
                                           keepNote(note);
                                       }}}});
    }
    return sheet;
}

void PieceSpace::markRows(Sheet& sheet, const store::NotedPhoto& photo)
{
    for (std::size_t i = 1; i <= photo.note.marks.size(); ++i) {
        const record::PhotoMark& mark = photo.note.marks[i - 1];
        sheet.add(Sheet::Row{QStringLiteral("home/see/mark/%1").arg(i),
                             tr("%1. %2").arg(i).arg(service::markWords(mark.kind)),
                             text(mark.note),
                             {},
                             [this, i, note = text(mark.note)] {
                                 m_chosenMark = m_chosenMark == i ? 0 : i;
                                 m_words = note;
                                 m_mark.reset();
                                 refresh();
                             },
                             m_chosenMark == i});
        if (m_chosenMark != i) {
            continue;
        }
        sheet.add(Sheet::Field{QStringLiteral("markNote"),
                               tr("What is to be said of it, such as “rim, 12 mm”"),
                               m_words,
                               {},
                               {},
                               [this](const QString& typed) { m_words = typed; }});
        sheet.add(Sheet::Choices{{},
                                 {{QStringLiteral("home/keepmark"),
                                   tr("Keep it"),
                                   {},
                                   [this, i] {
                                       record::PhotoNote note = this->photo()->note;
                                       note.marks[i - 1].note = m_words.trimmed().toStdString();
                                       keepNote(note);
                                   },
                                   true},
                                  {QStringLiteral("home/dropmark"), tr("Take the mark off"), {}, [this, i] {
                                       record::PhotoNote note = this->photo()->note;
                                       note.marks.erase(note.marks.begin() + std::ptrdiff_t(i) - 1);
                                       keepNote(note);
                                   }}}});
    }
}

void PieceSpace::point(int x, int y)
{
    const store::NotedPhoto* shown = photo();
    if (!shown || !m_mark || shown->note.marks.size() >= mostMarks) {
        return;
    }
    record::PhotoNote note = shown->note;
    note.marks.push_back({*m_mark, std::clamp(x, 0, 10'000), std::clamp(y, 0, 10'000), {}});
    keepNote(note);
    m_chosenMark = note.marks.size(); // its words are asked next
    m_words.clear();
    refresh();
    page().reveal(QStringLiteral("home/keepmark"));
}

/// Shown at once and handed on to be kept.
void PieceSpace::keepNote(const record::PhotoNote& note)
{
    const store::NotedPhoto* shown = photo();
    if (!shown) {
        return;
    }
    const store::PhotoUse use = shown->use;
    auto changed = std::make_shared<PieceNow>(*m_now);
    for (store::NotedPhoto& each : changed->file.photos) {
        if (each.use == use) {
            each.note = note;
        }
    }
    m_now = std::move(changed);
    m_mark.reset();
    m_chosenMark = 0;
    m_words = text(note.words);
    refresh();
    Q_EMIT photoNoted(use, note);
}

Sheet PieceSpace::pickSheet()
{
    parts::FolderRows rows;
    rows.key = QStringLiteral("home/see");
    rows.folder = m_folder;
    rows.kinds = {QStringLiteral("*.jpg"),  QStringLiteral("*.jpeg"), QStringLiteral("*.png"),
                  QStringLiteral("*.webp"), QStringLiteral("*.tif"),  QStringLiteral("*.tiff"),
                  QStringLiteral("*.bmp"),  QStringLiteral("*.gif"),  QStringLiteral("*.heic")};
    rows.locale = m_manner.locale;
    rows.zone = m_manner.zone;
    rows.go = [this](const QString& to) {
        m_folder = to;
        m_picked.clear();
        Q_EMIT photoFolderChosen(to);
        refresh();
        page().scrollTo(0);
    };
    rows.isPicked = [this](const QString& file) { return m_picked.contains(file); };
    rows.pick = [this](const QString& file) {
        if (m_picked.contains(file)) {
            m_picked.removeAll(file);
        } else {
            m_picked += file;
        }
        refresh();
    };
    Sheet sheet;
    sheet.title = tr("Choose photos");
    sheet.beside = rows.path();
    sheet.back = {QStringLiteral("home/see/photos"), tr("All photos"), {}, [this] { openPage(PiecePage::Photos); }};
    if (!m_picked.isEmpty()) {
        sheet.add(Sheet::Choices{
            {},
            {{QStringLiteral("home/takephotos"),
              m_picked.size() == 1 ? tr("Take this photo") : tr("Take these %1 photos").arg(m_picked.size()),
              {},
              [this] {
                  const QStringList picked = m_picked;
                  m_picked.clear();
                  openPage(PiecePage::Photos);
                  Q_EMIT photosChosen(picked, purpose());
              },
              true}}});
    }
    const int photos = rows.addTo(sheet);
    if (photos == 0) {
        sheet.say(tr("No photo lies in this folder."), Sheet::Tone::Quiet);
    } else if (photos > parts::FolderRows::most) {
        sheet.say(tr("The newest %1 of %2 are shown; the rest can be dropped here from a file window.")
                      .arg(parts::FolderRows::most)
                      .arg(photos),
                  Sheet::Tone::Quiet);
    }
    return sheet;
}

} // namespace mend::app
