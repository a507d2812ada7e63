#pragma once

#include <QByteArray>
#include <QProcess>
#include <QRect>
#include <QString>
#include <QStringList>
#include <QTemporaryDir>
#include <memory>
#include <optional>
#include <vector>

namespace mend::test {

/// What the program says can be tapped or read, and where on the screen.
struct Spot {
    QString key;
    QRect rect;
    QString name;
    bool acts = false;
};

/// The built program with a home folder of its own, and what stands in its window.
class Program {
public:
    explicit Program(QString display);
    ~Program();

    void start(const QStringList& arguments);
    /// As a power cut would end it: nothing is flushed, nothing is said.
    void kill();
    qint64 pid() const { return m_process ? m_process->processId() : 0; }
    /// As the system does before it is shut down.
    void askToEnd();
    bool waitUntilEnded(int milliseconds, int* code = nullptr);
    bool isRunning() const { return m_process && m_process->state() != QProcess::NotRunning; }

    /// The spot whose name begins with these words; `acts` says whether it has to do something.
    std::optional<Spot> spot(const QString& words, bool acts = true);
    /// The first spot that acts and whose key begins so.
    std::optional<Spot> waitForKey(const QString& begin, int milliseconds);
    std::optional<Spot> waitForSpot(const QString& words, int milliseconds, bool acts = true);
    /// Whether such words are gone from the window in time.
    bool waitUntilGone(const QString& words, int milliseconds, bool acts = true);
    /// What stands in the window now, for a failure to show.
    QString all();
    /// Everything in the window, as last told.
    const std::vector<Spot>& spots();

    /// One line to its standard input.
    void tell(const QByteArray& line);
    /// What it said beside the spots since this was last asked, line by line.
    QStringList takeSaid();

    /// The one bench file in its home; empty if there is none or more than one.
    QString file() const;
    /// Starts the program once more beside this one.
    struct Ended {
        int code = -1;
        QByteArray said;
        qint64 milliseconds = 0;
    };
    Ended startAgain(const QStringList& arguments) const;
    QString home(const QString& name) const { return m_home.filePath(name); }
    /// `mendbench-desk` with the same home; empty if it did not end with 0.
    QByteArray desk(const QStringList& arguments) const;

private:
    QProcessEnvironment environment() const;
    void read();

    QTemporaryDir m_home;
    QString m_display;
    std::unique_ptr<QProcess> m_process;
    QByteArray m_pending;
    bool m_inBlock = false;
    QStringList m_said;
    std::vector<Spot> m_block;
    std::vector<Spot> m_spots;
};

} // namespace mend::test
