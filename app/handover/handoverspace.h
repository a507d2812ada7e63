#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QWidget>

#include "app/parts/sheetspace.h"
#include "app/parts/signaturepad.h"
#include "core/service/handingover.h"
#include "core/service/piecefile.h"
#include "core/service/wording.h"

#include <QImage>
#include <map>
#include <memory>
#include <optional>

namespace mend::app {

/// What the hand-over shows of one piece.
struct HandOverNow {
    service::PieceFile file;
    service::HandOverFacts facts;
    QString material;                    ///< whose wait decides, by its name; empty where none does
    std::map<std::string, QImage> small; ///< photos by hash, as far as they were read
    Instant at;
};

/// What became of it once it was told.
struct HandedOver {
    QString words;
    struct Paper {
        QString key;
        QString title;
        QString written; ///< where it went, or why it did not
    };
    std::vector<Paper> papers;
    bool canUndo = false;
    bool isStored = false;
};

/// Gives a piece back: what goes out is counted against what came in, what stands against it is said and answered,
/// and who takes it signs. One owner's facts only stand on it; those of all others are hidden meanwhile.
class HandOverSpace : public parts::SheetSpace {
    Q_OBJECT

public:
    explicit HandOverSpace(parts::TapGate& gate, QWidget* parent = nullptr);

    void setManner(const service::Manner& manner) { m_manner = manner; }
    void setLook(const parts::Look& look);
    /// Begins with this piece; the same one anew keeps what was answered.
    void setNow(std::shared_ptr<const HandOverNow> now);
    /// It has been told: what may still be done is shown.
    void setDone(std::optional<HandedOver> done);
    void say(const QString& words);
    PieceId piece() const { return m_now ? m_now->file.piece.id : PieceId(); }
    parts::SignaturePad& pad() { return *m_pad; }
    /// What would be told now.
    const service::HandingOver& told() const { return m_told; }
    /// What is still to be answered, one line each; empty: it may be told.
    QStringList open() const;

Q_SIGNALS:
    void handedOver(const mend::service::HandingOver& told, const QImage& signature);
    void undoWanted();
    void paperWanted(const QString& key); ///< "all": each of those that are given
    void leaveWanted();

private:
    using Against = service::HandOverFacts::Against;
    parts::Sheet listSheet() override;
    parts::Sheet pageSheet() override;
    parts::Sheet doneSheet();
    void sayPiece(parts::Sheet& sheet) const;
    void askFragments(parts::Sheet& sheet);
    void askAccessories(parts::Sheet& sheet);
    void askMissing(parts::Sheet& sheet);
    void askWait(parts::Sheet& sheet);
    void askMoney(parts::Sheet& sheet);
    void askWho(parts::Sheet& sheet);
    void offerDone(parts::Sheet& sheet);
    void begin();
    bool has(Against against) const;
    bool isShort() const;
    int fragmentsIn() const;
    int accessoriesIn() const;
    void countAccessories();
    parts::Sheet::Choice answer(const QString& key, const QString& words, std::string service::HandingOver::*part);

    service::Manner m_manner;
    std::shared_ptr<const HandOverNow> m_now;
    service::HandingOver m_told;
    std::optional<HandedOver> m_done;
    parts::SignaturePad* m_pad;
    QString m_said;
    QString m_fragments;      ///< as typed
    std::vector<bool> m_goes; ///< each kind of accessory, as it is ticked
    bool m_owedAnswered = false;
    bool m_tried = false;
};

} // namespace mend::app
