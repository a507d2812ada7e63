#pragma once

#include <algorithm>
#include <pulse/operation.h>
#include <vector>

namespace mend::sound {

/// The questions still open at the sound server. When their asker goes, they are
/// cancelled, so that no answer reaches an object that is no more.
class Operations {
public:
    Operations() = default;
    Operations(const Operations&) = delete;
    Operations& operator=(const Operations&) = delete;
    ~Operations() { cancel(); }

    /// Null, where the server was already gone, is passed over.
    void add(pa_operation* operation)
    {
        forgetDone();
        if (operation != nullptr) {
            m_open.push_back(operation);
        }
    }
    void cancel()
    {
        for (pa_operation* operation : m_open) {
            pa_operation_cancel(operation);
            pa_operation_unref(operation);
        }
        m_open.clear();
    }

private:
    void forgetDone()
    {
        std::erase_if(m_open, [](pa_operation* operation) {
            const bool isDone = pa_operation_get_state(operation) != PA_OPERATION_RUNNING;
            if (isDone) {
                pa_operation_unref(operation);
            }
            return isDone;
        });
    }

    std::vector<pa_operation*> m_open;
};

} // namespace mend::sound
