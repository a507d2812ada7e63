#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QWidget>

#include "app/parts/sheetspace.h"
#include "core/service/daylog.h"

#include <optional>
#include <vector>

namespace mend::app {

/// What the log asks about one fact; answered by whoever holds the service.
class LogAnswers {
public:
    virtual ~LogAnswers() = default;
    /// Every window that moves if the fact is told differently, one line each.
    virtual QStringList movedBy(EventId event, Instant happened, PieceId piece) const = 0;
    /// Every window that moves if it is taken back.
    virtual QStringList movedByTakingBack(EventId event) const = 0;
    /// What builds on it and would have to go with it, one line each.
    virtual QStringList goesWith(EventId event) const = 0;
};

/// What the log shows.
struct DayLogNow {
    struct Piece {
        PieceId id;
        QString name;
    };
    std::vector<service::LogLine> lines; ///< newest first
    std::vector<Piece> pieces;           ///< in hand: a fact can be moved to any of them
    QString day;                         ///< "today, Saturday 28 November"
    bool hasLater = false;               ///< it is an earlier day than today
};

/// The day's log: what was told, and each fact of the last day open to be moved to another piece or
/// time, or taken back, with every window that moves shown before it is kept.
class DayLogSpace : public parts::SheetSpace {
    Q_OBJECT

public:
    explicit DayLogSpace(parts::TapGate& gate, QWidget* parent = nullptr);

    void setManner(const service::Manner& manner);
    void setAnswers(const LogAnswers* answers) { m_answers = answers; }
    /// `now` also says which times are still to come.
    void setNow(DayLogNow now, Instant at);
    void open(EventId event);
    /// What became of the list for the wall.
    void showWallWritten(const QString& words)
    {
        m_wallWritten = words;
        refresh();
    }

    std::optional<EventId> chosen() const { return m_chosen; }

Q_SIGNALS:
    void factMoved(mend::EventId event, mend::Instant happened, mend::PieceId piece);
    void factTakenBack(mend::EventId event, const QString& reason);
    /// Another day: -1 the one before the one shown, +1 the one after.
    void dayWanted(int step);
    /// The Bench's cards are to be written as a list for the wall.
    void wallListWanted();

private:
    parts::Sheet listSheet() override;
    parts::Sheet pageSheet() override;
    const service::LogLine* line() const;
    QString below(const service::LogLine& line) const;
    void sayFact(parts::Sheet& sheet, const service::LogLine& line) const;
    void askTime(parts::Sheet& sheet);
    void askPiece(parts::Sheet& sheet, const service::LogLine& line);
    void offerMove(parts::Sheet& sheet, const service::LogLine& line);
    void offerTakingBack(parts::Sheet& sheet, const service::LogLine& line);
    void typeTime(const QString& typed);
    void moveTo(Instant happened);
    bool isMoved(const service::LogLine& line) const { return m_happened != line.happened || m_piece != line.piece; }

    DayLogNow m_now;
    service::Manner m_manner;
    Instant m_at;
    const LogAnswers* m_answers = nullptr;
    std::optional<EventId> m_chosen;
    Instant m_happened; ///< where the chosen fact is being moved to
    PieceId m_piece;
    QString m_typed; ///< time of day as typed
    QString m_reason;
    bool m_timeIsWrong = false;
    bool m_takingBack = false;
    QString m_wallWritten;
};

} // namespace mend::app
