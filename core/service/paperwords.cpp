#include "core/service/paperwords.h"

#include "core/service/datafolder.h"

#include <fstream>
#include <sstream>

namespace mend::service {

PaperWords::PaperWords(std::map<std::string, exchange::PaperText> shipped, std::map<std::string, std::string> settings)
    : m_shipped(std::move(shipped)), m_settings(std::move(settings))
{
}

std::string PaperWords::settingKey(const std::string& key) { return "paper." + key; }

bool PaperWords::isOwn(const std::string& key) const
{
    const auto own = m_settings.find(settingKey(key));
    return own != m_settings.end() && !own->second.empty();
}

QStringList PaperWords::lines(const std::string& key) const
{
    if (isOwn(key)) {
        return QString::fromStdString(m_settings.at(settingKey(key))).split(QLatin1Char('\n'), Qt::SkipEmptyParts);
    }
    QStringList lines;
    if (const auto shipped = m_shipped.find(key); shipped != m_shipped.end()) {
        for (const std::string& line : shipped->second.lines) {
            lines += QString::fromStdString(line);
        }
    }
    return lines;
}

std::string PaperWords::settingValue(const std::string& key, const QString& words) const
{
    QStringList lines;
    for (const QString& line : words.split(QLatin1Char('\n'))) {
        if (!line.trimmed().isEmpty()) {
            lines += line.trimmed();
        }
    }
    const PaperWords asShipped(m_shipped, {});
    return lines == asShipped.lines(key) ? std::string() : lines.join(QLatin1Char('\n')).toStdString();
}

std::map<std::string, exchange::PaperText> shippedPaperTexts()
{
    const auto folder = dataFolder();
    if (!folder) {
        return {};
    }
    const std::ifstream file(*folder / "papers" / "texts.json", std::ios::binary);
    std::ostringstream json;
    json << file.rdbuf();
    return exchange::readPaperTexts(json.str()).texts;
}

} // namespace mend::service
