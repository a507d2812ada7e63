#pragma once

#include "app/parts/actview.h"

namespace mend::parts {

/// A view whose content may be longer than itself: it is pushed by a finger, turned by a wheel,
/// and follows the keys. A thin bar at the edge says how much there is.
class ScrollView : public ActView {
    Q_OBJECT

public:
    explicit ScrollView(TapGate& gate, QWidget* parent = nullptr);

    /// Parts are placed as if nothing were scrolled.
    void setContent(std::vector<Part> parts, int height, const QColor& bar);
    void scrollTo(int offset);
    int offset() const { return m_offset; }
    int contentHeight() const { return m_height; }
    /// Brings a spot wholly into sight.
    void reveal(const QString& key);

protected:
    void wheelEvent(QWheelEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void focusMoved(const QString& key) override { reveal(key); }
    bool takesDrags() const override { return true; }
    /// The content stands so many pixels higher now; for what lies over it.
    virtual void scrolledTo(int) {}

private:
    void place();

    std::vector<Part> m_content;
    int m_height = 0;
    int m_offset = 0;
    QColor m_bar;
};

} // namespace mend::parts
