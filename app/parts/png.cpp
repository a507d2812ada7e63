#include "app/parts/png.h"

#include <QBuffer>

namespace mend::parts {

std::string pngOf(const QImage& image)
{
    QByteArray bytes;
    QBuffer out(&bytes);
    out.open(QIODevice::WriteOnly);
    image.save(&out, "PNG");
    return bytes.toStdString();
}

} // namespace mend::parts
