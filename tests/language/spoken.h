#pragma once

#include "app/parts/tokens.h"

#include <QLocale>
#include <QString>
#include <QStringList>
#include <QTranslator>

#include <vector>

namespace mend::app {

/// The two of the tests, and every one that is shipped; where MEND_LANGUAGES_WALKED is set, those it names.
QStringList languagesWalked();

/// Adds to these ways of having the window those that give words another room, in every other language.
template <class Way> void addSpoken(std::vector<Way>& ways)
{
    const std::vector<Way> english = ways;
    for (const Way& way : english) {
        if (way.theme != parts::Theme::Light || way.dpi != 96 || way.rtl) {
            continue; // words need the same room there
        }
        for (const QString& language : languagesWalked()) {
            ways.push_back(way);
            ways.back().language = language;
            ways.back().rtl = QLocale(language).textDirection() == Qt::RightToLeft;
        }
    }
}

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
