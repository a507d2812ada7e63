#pragma once

#include <QImage>

#include <string>

namespace mend::parts {

/// A picture as it is kept in the file: the bytes of a PNG (ISO/IEC 15948).
std::string pngOf(const QImage& image);

} // namespace mend::parts
