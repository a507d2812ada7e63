#pragma once

#include "core/exchange/papertexts.h"

#include <QStringList>

#include <map>
#include <string>

namespace mend::service {

/// The standing texts of papers as this studio says them: its own words where it has written some, else
/// those that ship. Own words are settings of the bench file, so they go where the bench goes.
class PaperWords {
public:
    PaperWords(std::map<std::string, exchange::PaperText> shipped, std::map<std::string, std::string> settings);

    /// The paragraphs of one text; none for a key that no paper knows.
    QStringList lines(const std::string& key) const;
    bool isOwn(const std::string& key) const;
    const std::map<std::string, exchange::PaperText>& shipped() const { return m_shipped; }

    /// The setting that keeps a text: its key, and the value it gets for these words. Words like those that
    /// ship, or none, give back the shipped ones: the value is empty.
    static std::string settingKey(const std::string& key);
    std::string settingValue(const std::string& key, const QString& words) const;

private:
    std::map<std::string, exchange::PaperText> m_shipped;
    std::map<std::string, std::string> m_settings;
};

/// The shipped texts of the program's own data folder; none where it is not there or has a fault (which the
/// tests of the shipped files rule out).
std::map<std::string, exchange::PaperText> shippedPaperTexts();

} // namespace mend::service
