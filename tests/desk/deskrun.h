#pragma once

#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>

#include <string>
#include <vector>

namespace mend::test {

/// What one run of the program gave.
struct DeskRan {
    int code = -1;
    QString out;
    QString err;
    QJsonObject json() const { return QJsonDocument::fromJson(out.toUtf8()).object(); }
};

inline DeskRan desk(const std::vector<std::string>& words)
{
    QStringList arguments;
    for (const std::string& word : words) {
        arguments << QString::fromStdString(word);
    }
    QProcess process;
    process.start(QStringLiteral(MEND_DESK), arguments);
    if (!process.waitForFinished(60'000)) {
        return {};
    }
    return {process.exitStatus() == QProcess::NormalExit ? process.exitCode() : -1,
            QString::fromUtf8(process.readAllStandardOutput()), QString::fromUtf8(process.readAllStandardError())};
}

} // namespace mend::test
