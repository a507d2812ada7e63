#pragma once

#include <QByteArray>
#include <QString>

namespace mend::parts {

/// The bytes of a file of resources/look, built into the program. The file must exist.
QByteArray lookResource(const QString& name);

} // namespace mend::parts
