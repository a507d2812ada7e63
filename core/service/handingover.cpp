#include "core/service/handingover.h"

namespace mend::service {

using bench::Event;
using bench::What;

std::vector<Event> eventsOf(const HandingOver& told, const Event& blank)
{
    std::vector<Event> events;
    const auto add = [&](What what) -> Event& {
        Event event = blank;
        event.what = what;
        event.piece = told.piece;
        return events.emplace_back(std::move(event));
    };
    const auto count = [&](const char* what, const std::optional<int>& number) {
        if (number) {
            Event& event = add(What::Counted);
            event.word = what;
            event.amount = *number;
        }
    };
    count("fragmentsOut", told.fragmentsOut);
    count("accessoriesOut", told.accessoriesOut);
    if (!told.missing.empty()) {
        add(What::Noted).note = told.missing;
    }
    if (told.paid && told.paid->minorUnits() != 0) {
        Event& event = add(What::Paid);
        event.amount = told.paid->minorUnits();
        event.word = told.paid->currency();
    }
    if (!told.owedReason.empty()) {
        add(What::Noted).note = told.owedReason;
    }
    if (!told.waitReason.empty()) {
        Event& event = add(What::WaitShortened);
        event.until = blank.happened;
        event.note = told.waitReason;
    }
    if (!told.unmended.empty()) {
        if (!told.takenBy.empty()) {
            add(What::Noted).note = told.takenBy;
        }
        Event& back = add(What::ReturnedUnmended);
        back.note = told.unmended;
        back.word = told.signedHow;
        return events;
    }
    Event& gone = add(What::HandedOver);
    gone.note = told.takenBy;
    gone.word = told.signedHow;
    return events;
}

} // namespace mend::service
