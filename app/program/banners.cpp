#include "app/program/banners.h"

#include "core/service/wording.h"

#include <QCoreApplication>
#include <algorithm>

namespace mend::app {

namespace {
QString sayBanner(const char* words) { return QCoreApplication::translate("Banners", words); }
} // namespace

void Banners::set(const QString& key, const QString& words, const QString& act)
{
    const auto held = std::ranges::find(m_banners, key, &Banner::key);
    if (held == m_banners.end()) {
        m_banners.push_back({key, words, act});
    } else {
        *held = {key, words, act};
    }
}

void Banners::clear(const QString& key)
{
    std::erase_if(m_banners, [&](const Banner& banner) { return banner.key == key; });
}

QString troubleWords(const Fault& fault)
{
    switch (fault.kind) {
    case FaultKind::DiskFull:
        return sayBanner("The disk is full: what you tell is kept here and not yet stored. Make room; alerts go on.");
    case FaultKind::Busy:
    case FaultKind::Locked:
        return sayBanner(
            "Another program holds the bench file: what you tell is kept here and stored once it lets go.");
    case FaultKind::ReadOnly:
        return sayBanner("The bench file cannot be written: nothing new is stored. Alerts go on.");
    case FaultKind::NotFound:
        return sayBanner("The bench file was moved or removed: nothing more is written to it. Put it back, or save it "
                         "elsewhere.");
    default:
        return sayBanner("Storing does not work at present: what you tell is kept here and tried again. Alerts go on.");
    }
}

QString damageWords(int findings)
{
    return sayBanner("%n place(s) in the bench file are not as they were written. Nothing was changed: restore a good "
                     "backup with “mendbench-desk restore BACKUP TO”.")
        .replace(QLatin1String("%n"), QString::number(findings));
}

QString clockBehindWords(Instant lastSeen, Instant now, const service::Manner& manner)
{
    return sayBanner(
               "The clock says %1, but the program last ran at %2. Set the clock right; no countdown was changed.")
        .arg(service::clockTime(now, now, manner), service::clockTime(lastSeen, now, manner));
}

QString clockStepWords(Span amount)
{
    const QString by = service::spanWords(std::chrono::abs(amount));
    return (amount > Span{0} ? sayBanner("The clock was put forward by %1; windows keep real elapsed time.")
                             : sayBanner("The clock was put back by %1; windows keep real elapsed time."))
        .arg(by);
}

} // namespace mend::app
