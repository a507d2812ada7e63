#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QObject>

#include "app/papers/tag.h"
#include "app/parts/aside.h"
#include "app/program/keeping.h"
#include "app/settings/settingsnow.h"
#include "core/service/paperwords.h"
#include "core/service/studio.h"
#include "core/service/wording.h"

#include <QSettings>
#include <QStringList>

namespace mend::app {

/// Writes papers as PDF into the folder that was chosen, on a thread of its own: a record with two dozen photos
/// takes a second or two.
class PaperDesk : public QObject {
    Q_OBJECT

public:
    struct Services {
        service::BenchService& bench;
        Keeping& keeping;
        parts::Aside& aside;
        const Clock& clock;
        QSettings& settings;
    };
    PaperDesk(Services services, QObject* parent = nullptr);

    void setManner(const service::Manner& manner, const service::Studio& studio);

    /// The key of every paper about a piece ("care-sheet"; "tag" is the last) and its title.
    static std::vector<std::pair<QString, QString>> all();
    /// Those that go with a piece at the hand-over.
    static QStringList atHandOver();

    QString folder() const;
    void setFolder(const QString& folder);
    papers::Sheet sheet() const;
    void setSheet(papers::Sheet sheet);
    /// The label that the printer of tags holds.
    papers::Label label() const;
    void setLabel(papers::Label label);

    /// `done` for each of them: its key, and one sentence of what became of it.
    using Told = std::function<void(const QString& key, const QString& words)>;
    void write(PieceId piece, const QStringList& keys, Told done);
    /// The standing words of all papers as this studio says them.
    void readTexts(std::function<void(std::vector<PaperTextNow>)> done);
    /// One of them in other words; none: those that ship.
    void keepText(const QString& key, const QString& words);
    /// The list of the Bench's cards for the wall.
    void writeWall(std::function<void(const QString& words)> done);

private:
    Services m_services;
    service::Manner m_manner;
    service::Studio m_studio;
};

} // namespace mend::app
