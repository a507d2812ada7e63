#include "app/desk/planning.h"

#include "core/exchange/planreader.h"

#include <QJsonArray>
#include <QJsonDocument>

#include <filesystem>
#include <fstream>
#include <sstream>

namespace mend::desk {

namespace {

Answer faultsIn(const std::string& file, const std::vector<exchange::JsonFault>& found)
{
    Answer answer;
    answer.ending = Ending::BadInput;
    QJsonArray faults;
    for (const exchange::JsonFault& fault : found) {
        answer.text += QStringLiteral("%1:%2:%3: %4\n")
                           .arg(QString::fromStdString(file))
                           .arg(fault.place.line)
                           .arg(fault.place.column)
                           .arg(QString::fromStdString(fault.text));
        faults.append(QJsonObject{{QStringLiteral("line"), fault.place.line},
                                  {QStringLiteral("column"), fault.place.column},
                                  {QStringLiteral("path"), QString::fromStdString(fault.path)},
                                  {QStringLiteral("text"), QString::fromStdString(fault.text)}});
    }
    answer.data = {{QStringLiteral("good"), false},
                   {QStringLiteral("fault"), QStringLiteral("badInput")},
                   {QStringLiteral("faults"), faults}};
    return answer;
}

} // namespace

Answer planProblem(const std::string& file, const PlanEffort& effort)
{
    std::error_code failed;
    std::ifstream stream(file, std::ios::binary);
    std::ostringstream text;
    text << stream.rdbuf();
    if (!stream || !std::filesystem::is_regular_file(file, failed)) {
        return refusal({FaultKind::NotFound, {}}, QString::fromStdString(file));
    }
    const exchange::ReadProblem read = exchange::readPlanProblem(text.str());
    if (!read.problem) {
        return faultsIn(file, read.faults);
    }

    const plan::Planned planned = planFor(*read.problem, effort);
    if (!planned.table) {
        return withoutPlan(*read.problem, planned);
    }
    const std::string solution = exchange::planSolutionText(*read.problem, *planned.table, statusOf(planned));
    Answer answer;
    answer.text = QString::fromStdString(solution);
    answer.data = QJsonDocument::fromJson(QByteArray::fromStdString(solution)).object();
    return answer;
}

} // namespace mend::desk
