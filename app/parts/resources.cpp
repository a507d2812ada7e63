#include "app/parts/resources.h"

#include <QFile>

// Outside any namespace, as the macro wants it: a static library drops resources that nobody names.
static void nameLookResources() { Q_INIT_RESOURCE(look); }

namespace mend::parts {

QByteArray lookResource(const QString& name)
{
    nameLookResources();
    QFile file(QStringLiteral(":/look/") + name);
    const bool opened = file.open(QIODevice::ReadOnly);
    Q_ASSERT(opened);
    return opened ? file.readAll() : QByteArray();
}

} // namespace mend::parts
