#include "app/papers/glyphs.h"

#include <QFontDatabase>
#include <QGlyphRun>
#include <QTextLayout>
#include <set>

namespace mend::papers {

namespace {

/// Where in the words a glyph is missing: UTF-16 positions, both halves of a pair.
std::set<qsizetype> missingAt(const QString& words)
{
    std::set<qsizetype> missing;
    QTextLayout layout(words, paperFont(10));
    layout.beginLayout();
    for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
        line.setLineWidth(1e6);
    }
    layout.endLayout();
    for (qsizetype at = 0; at < words.size(); ++at) {
        const qsizetype length = words[at].isHighSurrogate() && at + 1 < words.size() ? 2 : 1;
        const QChar character = words[at];
        // Marks of direction and joining draw nothing in any face, and are not missed.
        const bool silent = length == 1 && (character.isSpace() || character.category() == QChar::Other_Format ||
                                            character.category() == QChar::Other_Control);
        if (!silent) {
            for (const QGlyphRun& run : layout.glyphRuns(static_cast<int>(at), static_cast<int>(length))) {
                const auto glyphs = run.glyphIndexes();
                if (glyphs.contains(0)) {
                    missing.insert(at);
                }
            }
        }
        at += length - 1;
    }
    return missing;
}

QString characterAt(const QString& words, qsizetype at)
{
    return words.mid(at, words[at].isHighSurrogate() && at + 1 < words.size() ? 2 : 1);
}

} // namespace

QFont paperFont(double points, QFont::Weight weight)
{
    static const QStringList faces = [] {
        const QStringList installed = QFontDatabase::families();
        QStringList found;
        for (const char* face : {"Lato", "Noto Sans", "Noto Sans Arabic", "Noto Sans Hebrew", "Noto Sans Devanagari",
                                 "Noto Sans Thai", "Noto Sans CJK JP", "DejaVu Sans"}) {
            if (installed.contains(QLatin1String(face))) {
                found += QLatin1String(face);
            }
        }
        return found;
    }();
    QFont font;
    if (!faces.isEmpty()) {
        font.setFamilies(faces);
    }
    font.setPointSizeF(points);
    font.setWeight(weight);
    // Some letters would run together into one sign ("fi"), and no search would find the word again; Qt sets
    // them apart as soon as there is any space between letters, be it a 64th of a dot.
    font.setLetterSpacing(QFont::AbsoluteSpacing, 1.0 / 64);
    return font;
}

QStringList undrawable(const QString& words)
{
    QStringList found;
    for (const qsizetype at : missingAt(words)) {
        const QString character = characterAt(words, at);
        if (!found.contains(character)) {
            found += character;
        }
    }
    return found;
}

QString drawable(const QString& words)
{
    const auto missing = missingAt(words);
    if (missing.empty()) {
        return words;
    }
    QString drawn;
    for (qsizetype at = 0; at < words.size(); ++at) {
        const QString character = characterAt(words, at);
        drawn += missing.contains(at)
                     ? QStringLiteral("[U+%1]").arg(character.toUcs4().value(0), 4, 16, QLatin1Char('0')).toUpper()
                     : character;
        at += character.size() - 1;
    }
    return drawn;
}

} // namespace mend::papers
