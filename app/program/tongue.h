#pragma once

#include <QLocale>
#include <QString>
#include <QStringList>
#include <QTranslator>

#include <vector>

namespace mend::app {

/// A language that the program can speak.
struct Language {
    QString code; ///< BCP 47: "en", "de"
    QString name; ///< what it calls itself: "Deutsch"
    bool operator==(const Language&) const = default;
};

/// English, in which the program is written, then what was translated, by their own names.
std::vector<Language> languages();

/// What the language that is spoken now calls itself.
QString spokenLanguage();

/// The language for this wish; where none was told, the first of the machine's that there is, else English.
QString languageFor(const QString& wish, const QStringList& machine);

/// How days and figures are written in this language: as this machine does it where it speaks the same, else in the way
/// of its country. English on a machine whose country is not known to write it is that of the world: the day stands
/// before the month.
QLocale localeFor(const QString& code, const QLocale& machine);

/// What the program speaks. One at a time: it tells Qt which words to use, which way they run and, where Qt's own
/// words are installed, those of the small menu in a line that is typed into.
class Tongue {
public:
    Tongue() = default;
    ~Tongue();
    Tongue(const Tongue&) = delete;
    Tongue& operator=(const Tongue&) = delete;

    /// `wish` is a code, the name of a .qm file that somebody tries out, or empty: as this machine.
    /// False where a file holds no words; it speaks English then.
    bool speak(const QString& wish);
    /// Names of days, and how figures are written, in the language that is spoken.
    QLocale locale() const { return m_locale; }

private:
    void beSilent();

    QTranslator m_words;
    QTranslator m_qtWords;
    QLocale m_locale{QLocale::English};
};

} // namespace mend::app
