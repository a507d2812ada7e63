#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QObject>

#include "app/handover/handoverspace.h"
#include "app/parts/aside.h"
#include "app/photos/photoimport.h"
#include "app/piece/piecespace.h"
#include "app/program/keeping.h"
#include "app/program/paperdesk.h"
#include "app/shell/spaceslink.h"
#include "core/service/door.h"

#include <QSettings>

namespace mend::app {

/// Ties the Piece space and the hand-over to the door, the photos and the papers. It decides nothing.
class PieceLink : public QObject {
    Q_OBJECT

public:
    struct Services {
        service::Door& door;
        service::BenchService& bench;
        Keeping& keeping;
        const Clock& clock;
        QSettings& settings;
    };
    PieceLink(Services services, MainWindow& window, parts::TapGate& gate, const service::Manner& manner,
              const service::Studio& studio, QObject* parent = nullptr);

    void setManner(const service::Manner& manner, const service::Studio& studio);
    /// Brings the piece to the front.
    void openPiece(PieceId piece);
    void handOver(PieceId piece);
    /// The words that always stand on papers, and the list for the wall: from Settings and the Log.
    void connectPapers(SpacesLink& spaces);
    PieceSpace& space() { return *m_space; }
    HandOverSpace& handOverSpace() { return *m_handOver; }
    PaperDesk& papers() { return m_papers; }

private:
    void connectSpace();
    void connectTold();
    void connectHandOver();
    /// Reads the piece anew and shows it where it is looked at.
    void reload();
    void show();
    void showHandOver();
    void showDone();
    void needSmall();
    std::shared_ptr<const PieceNow> pieceNow() const;
    std::vector<PaperOffer> offers() const;
    bool mayWrite();
    void takePhotos(const QStringList& paths, const QString& purpose);
    void keepPhoto(PieceId piece, const Result<photos::ReadyPhoto>& photo, const QString& name, const QString& purpose);
    void wholePhoto(const std::string& hash);
    void tell(const service::HandingOver& told, const QImage& signature);
    void chooseTag(const QString& key);
    void writePapers(const QStringList& keys);
    bool isShown(const char* space) const { return m_window.spaceShown() == QLatin1String(space); }
    Instant now() const { return m_services.clock.now().utc; }

    Services m_services;
    MainWindow& m_window;
    service::Manner m_manner;
    PieceSpace* m_space;       ///< the window's
    HandOverSpace* m_handOver; ///< the window's
    parts::Aside m_aside;
    PaperDesk m_papers;
    PieceId m_piece;
    std::optional<service::PieceFile> m_file;
    std::map<std::string, QImage> m_small; ///< of this piece
    std::map<QString, QString> m_written;  ///< what became of each paper of this piece
    std::vector<EventId> m_handing;        ///< what was told at the last hand-over
    Instant m_handedAt;
    bool m_ownerHidden = false;
};

} // namespace mend::app
