#include "tests/language/spoken.h"

#include <QCoreApplication>
#include <QFile>
#include <gtest/gtest.h>

namespace mend::app {

QStringList languagesWalked()
{
    if (qEnvironmentVariableIsSet("MEND_LANGUAGES_WALKED")) {
        return qEnvironmentVariable("MEND_LANGUAGES_WALKED").split(QLatin1Char(','), Qt::SkipEmptyParts);
    }
    return QStringList{QStringLiteral("en_XA"), QStringLiteral("he_XB")} +
           QStringLiteral(MEND_LANGUAGES).split(QLatin1Char(','), Qt::SkipEmptyParts);
}

Spoken::Spoken(const QString& language)
{
    if (language.isEmpty()) {
        return;
    }
    QString file = QStringLiteral(MEND_BINARY_DIR "/tests/language/mendbench_%1.qm").arg(language);
    if (!QFile::exists(file)) {
        file = QStringLiteral(MEND_BINARY_DIR "/resources/languages/mendbench_%1.qm").arg(language);
    }
    EXPECT_TRUE(m_words.load(file)) << file.toStdString();
    QCoreApplication::installTranslator(&m_words);
    QLocale::setDefault(QLocale(language));
}

Spoken::~Spoken()
{
    QCoreApplication::removeTranslator(&m_words);
    QLocale::setDefault(m_before);
}

} // namespace mend::app
