#pragma once

#include "app/shell/shellscenes.h"
#include "core/base/result.h"
#include "core/base/time.h"
#include "core/service/wording.h"
#include "core/store/backups.h"

#include <QString>
#include <vector>

namespace mend::app {

/// The lines that stand across the window until what they say is over, oldest first.
class Banners {
public:
    void set(const QString& key, const QString& words, const QString& act = {});
    void clear(const QString& key);
    const std::vector<Banner>& all() const { return m_banners; }

private:
    std::vector<Banner> m_banners;
};

/// Writing does not work at present; what was told is not lost.
QString troubleWords(const Fault& fault);
/// The file is open but takes nothing new; empty where it does.
QString standingWords(store::Standing standing);
/// Why a button does nothing then.
QString noWritingWords();
/// An act that can never be stored.
QString refusedWords();
/// The backup that was due could not be made.
QString backupFailedWords(const Fault& fault);
/// The bench could not be saved elsewhere.
QString moveFailedWords(const Fault& fault);
/// It goes on from a backup now, or not.
QString restoredWords(const store::Restored& restored);
QString notRestoredWords(const Fault& fault);
/// A check of the file found something; it is left as it is.
QString damageWords(int findings);
/// The wall clock is behind the time at which the program last ran.
QString clockBehindWords(Instant lastSeen, Instant now, const service::Manner& manner);
/// The wall clock was set.
QString clockStepWords(Span amount);

} // namespace mend::app
