#include "app/program/tongue.h"
#include "core/service/wording.h"

#include <QApplication>
#include <QDirIterator>
#include <QFile>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QXmlStreamReader>

#include <gmock/gmock.h>

namespace mend::app {
namespace {

using testing::Contains;
using testing::IsEmpty;
using testing::SizeIs;

QString pseudo(const char* language)
{
    return QStringLiteral(MEND_BINARY_DIR "/tests/language/mendbench_%1.qm").arg(QLatin1String(language));
}

TEST(Tongue, KnowsEnglishFirstAndEveryOtherByItsOwnName)
{
    const std::vector<Language> all = languages();
    EXPECT_EQ(all.front(), (Language{QStringLiteral("en"), QStringLiteral("English")}));
    EXPECT_THAT(all, Contains(Language{QStringLiteral("de"), QStringLiteral("Deutsch")}));
}

TEST(Tongue, FollowsTheWishThenTheMachineThenEnglish)
{
    const auto of = [](const char* wish, const QStringList& machine) {
        return languageFor(QString::fromLatin1(wish), machine).toStdString();
    };
    EXPECT_EQ(of("de", {QStringLiteral("fr-FR")}), "de");
    EXPECT_EQ(of("en", {QStringLiteral("de-DE")}), "en");
    EXPECT_EQ(of("", {QStringLiteral("de-AT"), QStringLiteral("en-GB")}), "de");
    EXPECT_EQ(of("", {QStringLiteral("cy-GB"), QStringLiteral("de-CH")}), "de"); // the machine's second language
    EXPECT_EQ(of("", {QStringLiteral("en-GB"), QStringLiteral("de-DE")}), "en");
    EXPECT_EQ(of("", {QStringLiteral("cy-GB")}), "en");
    EXPECT_EQ(of("xx", {}), "en");
}

TEST(Tongue, WritesDaysAsTheMachineDoesAndNeverAmericanUnasked)
{
    const QDate day(2026, 11, 28);
    const auto written = [day](const char* code, const QLocale& machine) {
        return localeFor(QString::fromLatin1(code), machine).toString(day, QLocale::LongFormat).toStdString();
    };
    const QLocale germany(QLocale::German, QLocale::Germany);
    const QLocale states(QLocale::English, QLocale::UnitedStates);
    const QLocale kingdom(QLocale::English, QLocale::UnitedKingdom);
    EXPECT_EQ(written("en", QLocale::c()), "Saturday, 28 November 2026");
    EXPECT_EQ(written("en", states), "Saturday, November 28, 2026");
    EXPECT_EQ(written("en", kingdom), "Saturday, 28 November 2026");
    EXPECT_EQ(written("en", germany), "Saturday, 28 November 2026");
    EXPECT_EQ(written("en", QLocale(QLocale::Czech, QLocale::Czechia)), "Saturday, 28 November 2026");
    EXPECT_EQ(written("de", germany), "Samstag, 28. November 2026");
    EXPECT_EQ(written("de", states), "Samstag, 28. November 2026");
    EXPECT_EQ(written("de", QLocale::c()), "Samstag, 28. November 2026");
}

TEST(Tongue, SpeaksWholeSentencesPluralsAndFigures)
{
    Tongue tongue;
    ASSERT_TRUE(tongue.speak(QStringLiteral("de")));
    EXPECT_EQ(service::missWords(rules::Miss::Afternoon), QStringLiteral("Versäumen kostet einen Nachmittag"));
    EXPECT_EQ(service::spanWords(std::chrono::hours(24)), QStringLiteral("1 Tag"));
    EXPECT_EQ(service::spanWords(std::chrono::hours(72)), QStringLiteral("3 Tage"));
    service::Manner manner;
    manner.locale = tongue.locale();
    EXPECT_EQ(service::temperatureWords(Temperature::fromCelsius(26.4), manner), QStringLiteral("26,4 °C"));
    EXPECT_EQ(spokenLanguage(), QStringLiteral("Deutsch"));
    EXPECT_EQ(QApplication::layoutDirection(), Qt::LeftToRight);
    EXPECT_EQ(QCoreApplication::translate("Wording", "nobody has translated this yet"),
              QStringLiteral("nobody has translated this yet"));
    ASSERT_TRUE(tongue.speak(QStringLiteral("en")));
    EXPECT_EQ(service::spanWords(std::chrono::hours(72)), QStringLiteral("3 days"));
    EXPECT_EQ(service::spanWords(std::chrono::hours(24)), QStringLiteral("1 day"));
}

TEST(Tongue, TurnsTheWindowRoundForALanguageThatRunsFromTheRight)
{
    Tongue tongue;
    ASSERT_TRUE(tongue.speak(pseudo("he_XB")));
    EXPECT_EQ(QApplication::layoutDirection(), Qt::RightToLeft);
    ASSERT_TRUE(tongue.speak(pseudo("en_XA")));
    EXPECT_EQ(QApplication::layoutDirection(), Qt::LeftToRight);
    ASSERT_TRUE(tongue.speak(QStringLiteral("en")));
}

TEST(Tongue, AFileWithoutWordsLeavesEnglish)
{
    const QTemporaryDir folder;
    const QString name = folder.filePath(QStringLiteral("mendbench_fr.qm"));
    QFile file(name);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("no words in here");
    file.close();
    Tongue tongue;
    EXPECT_FALSE(tongue.speak(name));
    EXPECT_FALSE(tongue.speak(folder.filePath(QStringLiteral("mendbench_it.qm"))));
    EXPECT_EQ(spokenLanguage(), QStringLiteral("English"));
    EXPECT_EQ(tongue.locale().language(), QLocale::English);
}

/// One entry of a file of words.
struct Entry {
    QString source;
    bool isCounted = false;
    bool isFinished = true;
    QStringList said; ///< one, or the forms of the plural
};

std::vector<Entry> entriesOf(const QString& name)
{
    QFile file(name);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << name.toStdString();
    QXmlStreamReader reader(&file);
    std::vector<Entry> all;
    while (!reader.atEnd()) {
        reader.readNext();
        if (!reader.isStartElement()) {
            continue;
        }
        if (reader.name() == QLatin1String("message")) {
            all.push_back({});
            all.back().isCounted = reader.attributes().value(QLatin1String("numerus")) == QLatin1String("yes");
        } else if (reader.name() == QLatin1String("source")) {
            all.back().source = reader.readElementText();
        } else if (reader.name() == QLatin1String("translation")) {
            all.back().isFinished = !reader.attributes().hasAttribute(QLatin1String("type"));
            if (!all.back().isCounted) {
                all.back().said << reader.readElementText();
            }
        } else if (reader.name() == QLatin1String("numerusform")) {
            all.back().said << reader.readElementText();
        }
    }
    EXPECT_FALSE(reader.hasError()) << name.toStdString() << reader.errorString().toStdString();
    return all;
}

/// "%1", "%2", "%n" in the order of the alphabet.
QStringList placesIn(const QString& words)
{
    static const QRegularExpression place(QStringLiteral("%L?(?:[0-9]+|n)"));
    QStringList found;
    for (auto each = place.globalMatch(words); each.hasNext();) {
        found << each.next().captured();
    }
    found.sort();
    return found;
}

TEST(Languages, EveryTranslationHasEveryFormAndEveryPlaceForAValue)
{
    int files = 0;
    QDirIterator all(QStringLiteral(MEND_SOURCE_DIR "/resources/languages"), {QStringLiteral("*.ts")});
    while (all.hasNext()) {
        const QString name = all.next();
        ++files;
        qsizetype forms = 0;
        for (const Entry& entry : entriesOf(name)) {
            if (!entry.isFinished) {
                continue; // English stands in for it
            }
            const std::string where = name.toStdString() + ": " + entry.source.toStdString();
            if (entry.isCounted) {
                forms = forms == 0 ? entry.said.size() : forms;
                EXPECT_THAT(entry.said, SizeIs(forms)) << where;
            }
            for (const QString& said : entry.said) {
                EXPECT_FALSE(said.isEmpty()) << where;
                QStringList missing = placesIn(entry.source);
                for (const QString& place : placesIn(said)) {
                    EXPECT_TRUE(missing.removeOne(place)) << where << " has no " << place.toStdString();
                }
                missing.removeOne(QStringLiteral("%n")); // "eine" says it as well
                EXPECT_THAT(missing, IsEmpty()) << where << " loses " << missing.join(QLatin1Char(' ')).toStdString();
            }
        }
    }
    EXPECT_GE(files, 1);
}

} // namespace
} // namespace mend::app
