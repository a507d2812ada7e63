#pragma once

#include <QLocale>
#include <QString>
#include <QStringList>
#include <QTranslator>

namespace mend::app {

/// The two of the tests, and every one that is shipped; where MEND_LANGUAGES_WALKED is set, those it names.
QStringList languagesWalked();

/// While it lives, every word that passes through a translation comes in that language: "en_XA" and "he_XB" of the
/// tests, or one that is shipped; empty: English.
class Spoken {
public:
    explicit Spoken(const QString& language);
    ~Spoken();
    Spoken(const Spoken&) = delete;
    Spoken& operator=(const Spoken&) = delete;

private:
    QTranslator m_words;
    QLocale m_before; ///< as it stood
};

} // namespace mend::app
