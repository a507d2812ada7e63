#include "app/program/sayacts.h"

#include "app/parts/actview.h"

#include <QRegion>
#include <QUrl>
#include <chrono>
#include <cstdio>

namespace mend::app {

namespace {

/// Often enough for whoever follows along, and asked for by nobody who works at a bench.
constexpr std::chrono::milliseconds lookEvery(50);

void describe(QByteArray& block, const parts::ActView& view)
{
    const QRegion seen = view.visibleRegion();
    for (const parts::Hit& hit : view.hits()) {
        const QRect here = hit.rect & seen.boundingRect();
        if (here.isEmpty() || !seen.contains(here.center())) {
            continue;
        }
        const QPoint at = view.mapToGlobal(here.topLeft());
        block += hit.canAct() ? "act " : "words ";
        block += QUrl::toPercentEncoding(hit.key, "/");
        for (const int figure : {at.x(), at.y(), here.width(), here.height()}) {
            block += ' ' + QByteArray::number(figure);
        }
        block += ' ' + hit.name.simplified().toUtf8() + '\n';
    }
}

} // namespace

SayActs::SayActs(QWidget& window, QObject* parent) : QObject(parent), m_window(window)
{
    connect(&m_timer, &QTimer::timeout, this, &SayActs::look);
    m_timer.start(lookEvery);
}

void SayActs::look()
{
    QByteArray block("acts\n");
    const auto views = m_window.findChildren<parts::ActView*>();
    for (const parts::ActView* view : views) {
        if (view->isVisible()) {
            describe(block, *view);
        }
    }
    block += "end\n";
    if (block != m_said) {
        m_said = block;
        std::fwrite(block.constData(), 1, static_cast<std::size_t>(block.size()), stdout);
        std::fflush(stdout);
    }
}

} // namespace mend::app
