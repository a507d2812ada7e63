#include "core/rules/figurecheck.h"

namespace mend::rules {

void FigureCheck::saneOrFault(Span value, const std::string& path)
{
    if (value < Span{0} || value > std::chrono::days{400}) {
        m_faults.add(path, "a time of a rule lies between nothing and 400 days");
    }
}

void FigureCheck::saneOrFault(Temperature value, const std::string& path)
{
    // -20 to 200 degrees Celsius: beyond, somebody wrote Fahrenheit or slipped a digit.
    if (value < Temperature::fromCentidegrees(-2000) || value > Temperature::fromCentidegrees(20000)) {
        m_faults.add(path, "a temperature of a rule lies between -20 and 200 degrees Celsius");
    }
}

void FigureCheck::saneOrFault(Humidity value, const std::string& path)
{
    if (value < Humidity::fromCount(0) || value > Humidity::fromCount(10000)) {
        m_faults.add(path, "relative humidity lies between 0 and 100 per cent");
    }
}

void FigureCheck::saneOrFault(Length value, const std::string& path)
{
    if (value < micrometres(0) || value > micrometres(10'000'000)) {
        m_faults.add(path, "a length of a rule lies between nothing and 10 metres");
    }
}

void FigureCheck::saneOrFault(ActivationEnergy value, const std::string& path)
{
    if (value < ActivationEnergy::fromCount(1000) || value > ActivationEnergy::fromCount(300'000)) {
        m_faults.add(path, "an activation energy lies between 1 and 300 kJ/mol");
    }
}

} // namespace mend::rules
