#pragma once

#include "app/paperwork/papers.h"
#include "tests/support/testbench.h"

namespace mend::test {

/// A bowl that was taken in, mended with gold and is nearly ready, with everything told of it.
struct Sample {
    Sample();
    paperwork::Source source() const;
    /// Folds what was told anew.
    void refold();

    rules::RuleBook book;
    TestBench bench;
    bench::BenchFold folded;
    service::PieceFile file;
    service::Studio studio;
    service::PaperWords words;
    Instant now = TestBench::at(60 * 30);
};

/// All words of a paper in one text.
QString wordsOf(const papers::Paper& paper);

} // namespace mend::test
