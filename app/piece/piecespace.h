#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QWidget>

#include "app/parts/sheetspace.h"
#include "app/piece/photoboard.h"
#include "core/service/piecefile.h"
#include "core/service/stagelines.h"
#include "core/service/wording.h"

#include <QImage>
#include <map>
#include <memory>
#include <optional>
#include <vector>

namespace mend::app {

/// A paper that can be written of the piece.
struct PaperOffer {
    QString key;
    QString title;
    QString written; ///< where it was written last, or why it was not
};

/// Something put into the piece at an earlier visit, which may be what gave way.
struct MayHaveGivenWay {
    bench::StageInstance stage;
    MixId mix;
    QString words; ///< "clear fast two-part adhesive"
    QString below; ///< "batch 7, 27 November 2026"
};

/// A label that a tag can be printed on.
struct TagOffer {
    QString key;
    QString words; ///< "62 × 29 mm"
    bool chosen = false;
};

/// Everything the Piece space shows of one piece.
struct PieceNow {
    service::PieceFile file;
    service::HandOverFacts facts;
    QString state;     ///< "in work"
    QString next;      ///< "Wipe back the filler"; empty where nothing is to do
    QString procedure; ///< its name
    bool inHand = false;
    std::vector<service::StageLine> stages;
    std::vector<MayHaveGivenWay> earlier;           ///< asked about once, when it has come back
    std::vector<parts::Sheet::Facts::Fact> object;  ///< as it stands on the papers too
    std::vector<parts::Sheet::Facts::Fact> counted; ///< likewise
    QStringList agreed;                             ///< point by point
    std::vector<PaperOffer> papers;
    QString paperFolder;
    bool letter = false;                 ///< Letter paper, else A4
    std::vector<TagOffer> tags;          ///< labels that a tag fits on
    std::map<std::string, QImage> small; ///< by hash, as far as they were read
    bool ownerHidden = false;
    Instant at;
};

/// The pages of the space; the list beside them leads to each.
enum class PiecePage { Condition, Photos, Photo, PickPhotos, Counts, Stages, Visits, Owner, Papers };

/// The home of one piece: what it is and whose, how it came, its photos with their marks, what has been done and
/// is to do, its visits and its papers. Hand-over starts here.
class PieceSpace : public parts::SheetSpace {
    Q_OBJECT

public:
    explicit PieceSpace(parts::TapGate& gate, QWidget* parent = nullptr);

    void setManner(const service::Manner& manner) { m_manner = manner; }
    void setLook(const parts::Look& look);
    /// Another piece begins at its first page; the same one anew stays where it is.
    void setNow(std::shared_ptr<const PieceNow> now);
    void showNone();
    void openPage(PiecePage page);
    void openPhoto(const std::string& hash);
    /// The photo that was asked for, whole.
    void setPhoto(const std::string& hash, const QImage& photo);
    /// Said at the head of the space until the next act.
    void say(const QString& words);
    /// Where photos were chosen last.
    void setPhotoFolder(const QString& folder) { m_folder = folder; }
    PhotoBoard& board() { return *m_board; }
    PieceId piece() const { return m_now ? m_now->file.piece.id : PieceId(); }

Q_SIGNALS:
    void ownerHiddenWanted(bool hidden);
    void photoWanted(const std::string& hash); ///< whole, to be marked
    void photosChosen(const QStringList& paths, const QString& purpose);
    void photoPasted(const QImage& picture, const QString& purpose);
    void photoFolderChosen(const QString& folder);
    void photoNoted(const mend::store::PhotoUse& use, const mend::record::PhotoNote& note);
    void conditionTold(const mend::record::Visit& visit);
    void faultNamed(const mend::bench::StageInstance& stage, mend::MixId mix, const QString& note);
    void fragmentFound(int count, const QString& where);
    void ownerTold(const QString& how, const QString& about, bool isNotice);
    void paperWanted(const QString& key);
    void paperFolderTold(const QString& folder);
    void sheetChosen(bool letter);
    void tagChosen(const QString& key);
    void handOverWanted();

protected:
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    parts::Sheet listSheet() override;
    parts::Sheet pageSheet() override;
    void row(parts::Sheet& sheet, PiecePage page, const QString& label, const QString& value);
    void sayWho(parts::Sheet& sheet) const;
    void sayOwner(parts::Sheet& sheet);
    void offerHandOver(parts::Sheet& sheet);
    parts::Sheet conditionSheet();
    parts::Sheet editSheet();
    parts::Sheet photosSheet();
    void photosOf(parts::Sheet& sheet, const char* purpose, const QString& title);
    parts::Sheet photoSheet();
    void markRows(parts::Sheet& sheet, const store::NotedPhoto& photo);
    parts::Sheet pickSheet();
    parts::Sheet countsSheet();
    parts::Sheet stagesSheet();
    parts::Sheet visitsSheet();
    void askFault(parts::Sheet& sheet);
    parts::Sheet ownerSheet();
    parts::Sheet papersSheet();
    void point(int x, int y);
    void keepNote(const record::PhotoNote& note);
    const store::NotedPhoto* photo() const;
    QString purpose() const;
    void paste();
    QString day(Instant at) const;

    service::Manner m_manner;
    std::shared_ptr<const PieceNow> m_now;
    PiecePage m_page = PiecePage::Condition;
    PhotoBoard* m_board;
    QString m_said;
    // What is being told on a page and not kept yet.
    std::optional<record::Visit> m_editing;
    QString m_purpose; ///< empty: as the state of the piece suggests
    std::string m_photo;
    std::optional<record::MarkKind> m_mark;
    std::size_t m_chosenMark = 0; ///< from 1; 0: none
    QString m_words;              ///< of the mark or the photo that is typed
    QString m_folder;
    QStringList m_picked;
    QString m_count;
    QString m_where;
    QString m_about;
    QString m_paperFolder;
};

/// The drawn pot that stands for a piece without a photo, for a square of that many pixels.
QImage drawnPot(const parts::Look& look, const record::Piece& piece, int side);

} // namespace mend::app
