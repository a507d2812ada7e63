#include "app/program/tongue.h"

#include <QDir>
#include <QFileInfo>
#include <QGuiApplication>
#include <QLibraryInfo>

#include <algorithm>

// Outside any namespace, as the macro wants it: a static library drops resources that nobody names.
static void nameLanguages() { Q_INIT_RESOURCE(languages); }

namespace mend::app {

namespace {

const QString& english()
{
    static const QString code = QStringLiteral("en");
    return code;
}

constexpr auto ownName = QT_TRANSLATE_NOOP("Language", "English"); ///< each calls itself by its own name there

/// An empty file of words loads without complaint: only one that names its own language counts.
QString nameIn(const QTranslator& words) { return words.translate("Language", ownName); }

QString fileFor(const QString& code) { return QStringLiteral(":/languages/mendbench_%1.qm").arg(code); }

QString codeOf(const QString& file) { return QFileInfo(file).completeBaseName().section(QLatin1Char('_'), 1); }

} // namespace

std::vector<Language> languages()
{
    nameLanguages();
    std::vector<Language> all;
    for (const QString& file : QDir(QStringLiteral(":/languages")).entryList({QStringLiteral("mendbench_*.qm")})) {
        QTranslator words;
        const bool isRead = words.load(QStringLiteral(":/languages/") + file);
        if (const QString name = isRead ? nameIn(words) : QString(); !name.isEmpty()) {
            all.push_back({codeOf(file), name});
        }
    }
    std::ranges::sort(all, {}, [](const Language& each) { return each.name.toCaseFolded(); });
    all.insert(all.begin(), Language{english(), QStringLiteral("English")});
    return all;
}

QString spokenLanguage() { return QCoreApplication::translate("Language", ownName); }

QString languageFor(const QString& wish, const QStringList& machine)
{
    const std::vector<Language> known = languages();
    for (const QString& wanted : wish.isEmpty() ? machine : QStringList{wish}) {
        const QLocale locale(wanted);
        for (const Language& each : known) {
            const bool isSame = each.code.compare(wanted, Qt::CaseInsensitive) == 0;
            if (isSame || QLocale(each.code).language() == locale.language()) {
                return each.code;
            }
        }
    }
    return english();
}

QLocale localeFor(const QString& code, const QLocale& machine)
{
    const QLocale plain(code);
    if (machine.language() == plain.language()) {
        return machine;
    }
    const QLocale there(plain.language(), machine.territory());
    const bool isKnown = there.language() == plain.language() && there.territory() == machine.territory();
    if (isKnown && machine.language() != QLocale::C && !code.contains(QLatin1Char('_'))) {
        return there;
    }
    return code == english() ? QLocale(QLocale::English, QLocale::World) : plain;
}

Tongue::~Tongue() { beSilent(); }

void Tongue::beSilent()
{
    QCoreApplication::removeTranslator(&m_words);
    QCoreApplication::removeTranslator(&m_qtWords);
}

bool Tongue::speak(const QString& wish)
{
    beSilent();
    const bool isFile = wish.endsWith(QStringLiteral(".qm"));
    const QString code = isFile ? codeOf(wish) : languageFor(wish, QLocale::system().uiLanguages());
    const bool isTranslated = isFile || code != english();
    const bool isRead = !isTranslated || (m_words.load(isFile ? wish : fileFor(code)) && !nameIn(m_words).isEmpty());
    const QString spoken = isRead ? code : english();
    m_locale = localeFor(spoken, QLocale::system());
    if (isTranslated && isRead) {
        if (m_qtWords.load(QLocale(spoken), QStringLiteral("qtbase"), QStringLiteral("_"),
                           QLibraryInfo::path(QLibraryInfo::TranslationsPath))) {
            QCoreApplication::installTranslator(&m_qtWords);
        }
        QCoreApplication::installTranslator(&m_words);
    }
    QLocale::setDefault(m_locale);
    QGuiApplication::setLayoutDirection(m_locale.textDirection());
    return isRead;
}

} // namespace mend::app
