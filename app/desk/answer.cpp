#include "app/desk/answer.h"

namespace mend::desk {

QString faultWords(const Fault& fault)
{
    switch (fault.kind) {
    case FaultKind::NotFound:
        return QStringLiteral("it is not there");
    case FaultKind::BadInput:
        return QStringLiteral("it makes no sense");
    case FaultKind::Busy:
        return QStringLiteral("another program is using it; try again in a moment");
    case FaultKind::ReadOnly:
        return QStringLiteral("it can only be read");
    case FaultKind::DiskFull:
        return QStringLiteral("the disk is full");
    case FaultKind::Damaged:
        return QStringLiteral("it is damaged");
    case FaultKind::Foreign:
        return QStringLiteral("it is not a bench file");
    case FaultKind::Newer:
        return QStringLiteral("it was written by a newer version of Mendbench");
    case FaultKind::Unwritable:
        return QStringLiteral("it cannot be written");
    case FaultKind::Locked:
        return QStringLiteral("it is open in another Mendbench; close it there first");
    case FaultKind::Conflict:
        return QStringLiteral("something else stands in its place");
    case FaultKind::Cancelled:
        return QStringLiteral("it was broken off");
    case FaultKind::Unavailable:
        return QStringLiteral("it cannot be done here");
    }
    return {};
}

Ending endingOf(FaultKind kind)
{
    switch (kind) {
    case FaultKind::NotFound:
    case FaultKind::BadInput:
    case FaultKind::Damaged:
    case FaultKind::Foreign:
    case FaultKind::Newer:
        return Ending::BadInput;
    default:
        return Ending::Otherwise;
    }
}

QString faultKey(FaultKind kind)
{
    switch (kind) {
    case FaultKind::NotFound:
        return QStringLiteral("notFound");
    case FaultKind::BadInput:
        return QStringLiteral("badInput");
    case FaultKind::Busy:
        return QStringLiteral("busy");
    case FaultKind::ReadOnly:
        return QStringLiteral("readOnly");
    case FaultKind::DiskFull:
        return QStringLiteral("diskFull");
    case FaultKind::Damaged:
        return QStringLiteral("damaged");
    case FaultKind::Foreign:
        return QStringLiteral("foreign");
    case FaultKind::Newer:
        return QStringLiteral("newer");
    case FaultKind::Unwritable:
        return QStringLiteral("unwritable");
    case FaultKind::Locked:
        return QStringLiteral("locked");
    case FaultKind::Conflict:
        return QStringLiteral("conflict");
    case FaultKind::Cancelled:
        return QStringLiteral("cancelled");
    case FaultKind::Unavailable:
        return QStringLiteral("unavailable");
    }
    return {};
}

Answer refusal(const Fault& fault, const QString& about)
{
    Answer answer;
    answer.ending = endingOf(fault.kind);
    answer.text = about + QStringLiteral(": ") + faultWords(fault);
    if (!fault.detail.empty()) {
        answer.text += QStringLiteral(" (") + QString::fromStdString(fault.detail) + QLatin1Char(')');
    }
    answer.text += QLatin1Char('\n');
    answer.data = {{QStringLiteral("good"), false},
                   {QStringLiteral("about"), about},
                   {QStringLiteral("fault"), faultKey(fault.kind)},
                   {QStringLiteral("detail"), QString::fromStdString(fault.detail)}};
    return answer;
}

} // namespace mend::desk
