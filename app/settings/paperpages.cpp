#include "app/settings/paperpages.h"

#include <QCoreApplication>

namespace mend::app {

using parts::Sheet;

namespace {

constexpr int mostParagraphs = 20;

// What a translator finds these words under.
class PaperTextWords {
    Q_DECLARE_TR_FUNCTIONS(PaperTextWords)
};

QString firstOf(const PaperTextNow& text)
{
    constexpr int shown = 120;
    const QString first = text.lines.value(0);
    return first.size() > shown ? first.left(shown) + QChar(0x2026) : first;
}

} // namespace

Sheet paperTextsSheet(const std::vector<PaperTextNow>& texts, const PaperActs& acts)
{
    Sheet sheet;
    sheet.title = PaperTextWords::tr("Words on papers");
    sheet.say(PaperTextWords::tr(
                  "What always stands on a paper. Your own words stay in the bench file and go where it goes."),
              Sheet::Tone::Quiet);
    for (const PaperTextNow& text : texts) {
        sheet.add(Sheet::Row{QStringLiteral("settings/paper/") + text.key, text.says, firstOf(text),
                             text.isOwn ? PaperTextWords::tr("your own") : QString(),
                             [open = acts.open, key = text.key] { open(key); }});
    }
    return sheet;
}

Sheet paperTextSheet(const PaperTextNow& text, const QStringList& paragraphs, const PaperActs& acts)
{
    Sheet sheet;
    sheet.title = text.says;
    sheet.beside = text.isOwn ? PaperTextWords::tr("your own words") : PaperTextWords::tr("the words that ship");
    sheet.back = {QStringLiteral("settings/papers"), PaperTextWords::tr("All papers"), {}, acts.leave};
    const int count = std::min(static_cast<int>(paragraphs.size()) + 1, mostParagraphs);
    for (int i = 0; i < count; ++i) {
        const bool isFree = i == paragraphs.size();
        sheet.add(Sheet::Field{QStringLiteral("paragraph/%1").arg(i),
                               isFree ? PaperTextWords::tr("One paragraph more")
                                      : PaperTextWords::tr("Paragraph %1").arg(i + 1),
                               paragraphs.value(i),
                               {},
                               {},
                               [edited = acts.edited, i](const QString& words) { edited(i, words); }});
    }
    Sheet::Choices choices;
    choices.choices.push_back(
        {QStringLiteral("papertext/keep"), PaperTextWords::tr("Keep these words"), {}, acts.keep, true});
    if (text.isOwn) {
        choices.choices.push_back(
            {QStringLiteral("papertext/reset"), PaperTextWords::tr("Back to the words that ship"), {}, acts.reset});
    }
    sheet.add(std::move(choices));
    return sheet;
}

} // namespace mend::app
