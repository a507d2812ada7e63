#pragma once

#include "app/sound/signal.h"

#include <QProcess>
#include <QString>
#include <QTemporaryDir>
#include <memory>

/// A real sound server of the test's own: private folder, silent sinks, no desktop.
/// What is played into a sink is recorded from its monitor.
namespace mend::test {

class SoundServer {
public:
    static bool isInstalled();

    /// Points this process, and so every child, at a private XDG_RUNTIME_DIR; starts nothing.
    SoundServer();
    ~SoundServer();

    /// Sees that the server runs with one silent sink "bench" and that its sink is listened to, which
    /// also keeps its latency at about 10 ms; false if it does not come within 10 s.
    bool start();
    /// Ends it in the middle of whatever it does, as a crash would.
    void crash();
    /// Stops it from answering without ending it, as a hung server would.
    void freeze();
    void thaw();
    /// One command of pactl; its output, empty on failure.
    QString control(const QStringList& arguments);

    /// From now on counts what comes out of the sink.
    void mark(const QString& sink = QStringLiteral("bench"));
    /// What came out of it since the mark.
    sound::Pcm sinceMark();

private:
    void listen(const QString& sink);
    QString recording() const { return m_folder.filePath(QStringLiteral("recording.raw")); }

    QTemporaryDir m_folder;
    std::unique_ptr<QProcess> m_server;
    std::unique_ptr<QProcess> m_recorder;
    QString m_listenedTo;
    qint64 m_mark = 0;
};

} // namespace mend::test
