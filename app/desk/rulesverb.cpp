#include "app/desk/verbs.h"

#include "core/service/datafolder.h"
#include "core/service/ruleshelf.h"

#include <QJsonArray>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace mend::desk {

namespace fs = std::filesystem;

namespace {

/// Files as they were named; a folder stands for every rule file in it.
Result<std::vector<exchange::RuleText>> readAll(const std::vector<std::string>& files)
{
    std::vector<exchange::RuleText> texts;
    for (const std::string& file : files) {
        std::error_code failed;
        if (fs::is_directory(file, failed)) {
            const auto inside = service::ruleTextsIn(file);
            texts.insert(texts.end(), inside.begin(), inside.end());
            continue;
        }
        std::ifstream stream(file, std::ios::binary);
        std::ostringstream text;
        text << stream.rdbuf();
        if (!stream || !fs::is_regular_file(file, failed)) {
            return Fault{FaultKind::NotFound, file};
        }
        texts.push_back({file, text.str()});
    }
    return texts;
}

/// Those that ship, without any that is being validated itself.
std::vector<exchange::RuleText> shippedBeside(const std::vector<exchange::RuleText>& given)
{
    const auto data = service::dataFolder();
    if (!data) {
        return {};
    }
    auto shipped = service::ruleTextsIn(*data / "rules");
    std::erase_if(shipped, [&](const exchange::RuleText& text) {
        return std::ranges::any_of(given, [&](const exchange::RuleText& asked) {
            std::error_code ignored;
            return asked.text == text.text || fs::equivalent(asked.file, text.file, ignored);
        });
    });
    return shipped;
}

QString placeOf(const rules::RuleFault& fault)
{
    QString place = QString::fromStdString(fault.file);
    if (fault.line > 0) {
        place += QStringLiteral(":%1:%2").arg(fault.line).arg(fault.column);
    }
    return place;
}

} // namespace

Answer checkRules(const std::vector<std::string>& files)
{
    auto given = readAll(files);
    if (!given) {
        return refusal({given.fault().kind, {}}, QString::fromStdString(given.fault().detail));
    }
    std::vector<exchange::RuleText> texts = shippedBeside(given.value());
    texts.insert(texts.end(), given.value().begin(), given.value().end());
    const exchange::ReadRules read = exchange::readRules(texts);

    Answer answer;
    QJsonArray faults;
    for (const rules::RuleFault& fault : read.faults) {
        answer.text += placeOf(fault) + QStringLiteral(": ") + QString::fromStdString(fault.text) + QLatin1Char('\n');
        faults.append(QJsonObject{{QStringLiteral("file"), QString::fromStdString(fault.file)},
                                  {QStringLiteral("line"), fault.line},
                                  {QStringLiteral("column"), fault.column},
                                  {QStringLiteral("path"), QString::fromStdString(fault.path)},
                                  {QStringLiteral("text"), QString::fromStdString(fault.text)}});
    }
    answer.ending = read.isGood() ? Ending::Good : Ending::BadInput;
    answer.text += read.isGood() ? QStringLiteral("%1 rule files, no fault\n").arg(given.value().size())
                                 : QStringLiteral("%1 faults\n").arg(read.faults.size());
    answer.data = {{QStringLiteral("good"), read.isGood()},
                   {QStringLiteral("files"), static_cast<int>(given.value().size())},
                   {QStringLiteral("faults"), faults}};
    return answer;
}

} // namespace mend::desk
