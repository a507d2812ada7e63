#pragma once

#include "app/papers/paper.h"

#include <QPagedPaintDevice>
#include <QTextDocument>
#include <memory>

namespace mend::papers {

/// Lays the blocks of a paper out for one page size. The document fetches nothing: the only
/// pictures it draws are those that were handed in.
std::unique_ptr<QTextDocument> layOut(const Paper& paper, QPaintDevice& device, const QSizeF& body);

/// Every word that will stand on the paper, for a look at what cannot be drawn.
QString allWords(const Paper& paper);

} // namespace mend::papers
