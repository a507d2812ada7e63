#pragma once

#include <string>
#include <string_view>

namespace mend {

/// The seal under which a rule revision is kept for ever and by which one row of the
/// record hangs on the row before: SHA-256 (FIPS 180-4) of the bytes, as 64 lower-case
/// hexadecimal digits. Any length from 0 bytes on; never fails.
std::string sha256(std::string_view bytes);

} // namespace mend
