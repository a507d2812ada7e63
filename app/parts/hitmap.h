#pragma once

#include <QRect>
#include <QString>

#include <functional>

namespace mend::parts {

/// What a spot of a painted view is, for a finger and for a screen reader.
enum class HitKind {
    BenchAct, ///< done, hands on it, begin: at least 20 mm each way, 3 mm from the next
    Other,    ///< at least 12 mm each way
    Card,     ///< a card or a row: read out, may be chosen by keys
    Words,    ///< only read out
};

/// One spot: the rectangle that feeds painting, mouse, touch, keys, the screen reader and the
/// walker of the tests. The key names what it does, so that a tap on a spot that has just
/// turned into something else can be told apart.
struct Hit {
    QString key; ///< "piece/3/Finish/wipeBack/1"
    QRect rect;
    QString name; ///< begins with the words that are seen
    QString more; ///< what a screen reader adds
    HitKind kind = HitKind::Other;
    std::function<void()> act; ///< empty: nothing happens
    bool chosen = false;
    bool curbed = false; ///< would act but may not now: `more` says why
    bool isButton() const { return kind == HitKind::BenchAct || kind == HitKind::Other; }
    bool canAct() const { return static_cast<bool>(act); }
};

} // namespace mend::parts
