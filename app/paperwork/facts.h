#pragma once

#include "app/paperwork/source.h"

#include <QCoreApplication>

// What several papers say alike.
namespace mend::paperwork {

/// Words of a paper in the language of the studio, as a translator finds them.
class PapersWords {
    Q_DECLARE_TR_FUNCTIONS(PapersWords)
};

/// Head of a paper about a piece: number, bench name, studio, date.
papers::Paper headed(const QString& kind, const Source& source);

/// What it is: looks, maker, marks, size, body.
papers::Facts objectFacts(const Source& source);
/// Whose it is and how to reach them.
papers::Facts ownerFacts(const Source& source);
/// "Fragments" "7", "Came with it" "lid; stand (2)".
papers::Facts countFacts(const Source& source);

/// What the owner agreed to, point by point; what was not ticked is said too.
papers::Points agreedPoints(const record::Consent& consent);

/// What was seen, and apart from it what is inferred.
void addCondition(papers::Paper& paper, const Source& source);
/// The photos taken for one purpose, if any, under a heading.
void addPhotos(papers::Paper& paper, const Source& source, const char* purpose, const QString& heading);
/// A standing text as paragraphs; cautions stand framed.
void addText(papers::Paper& paper, const Source& source, const std::string& key, bool isCaution = false);

/// The visit that the paper is about; an empty one for a piece from before visits were kept.
const record::Visit& visitOf(const Source& source);
/// The procedure that was agreed at this visit, else the one that the piece came with: its key, its name.
const std::string& procedureKey(const Source& source);
QString procedureName(const Source& source);
QString todayWords(const Source& source);
QString lengthWords(Length length, const Source& source);

/// Leaves out what nobody told.
void add(papers::Facts& facts, const QString& label, const QString& words);
void append(papers::Facts& facts, const papers::Facts& more);

} // namespace mend::paperwork
