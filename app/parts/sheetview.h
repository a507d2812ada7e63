#pragma once

#include "app/parts/scrollview.h"
#include "app/parts/sheet.h"

#include <QLineEdit>

namespace mend::parts {

/// Shows a sheet: draws it, scrolls it, and holds a real line to type into at each of its fields.
class SheetView : public ScrollView {
    Q_OBJECT

public:
    explicit SheetView(TapGate& gate, QWidget* parent = nullptr);

    void setLook(const Look& look);
    /// The same sheet with other values keeps its place and what is being typed; another title
    /// begins at the top.
    void setSheet(Sheet sheet);
    const Sheet& sheet() const { return m_sheet; }
    QLineEdit* field(const QString& key) const;
    /// A widget for the inset of that key: this becomes its parent, shows it where the sheet has room for it and
    /// hides it else.
    void setInset(const QString& key, QWidget* widget);
    const std::map<QString, QLineEdit*>& fields() const { return m_fields; }

Q_SIGNALS:
    /// Return was pressed in a field.
    void entered(const QString& field);

protected:
    void showEvent(QShowEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void scrolledTo(int offset) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void compose();
    void dressFields();
    QLineEdit* newField(const QString& key);
    void placeFields();
    QString focusedField() const;

    Look m_look;
    Sheet m_sheet;
    std::map<QString, QLineEdit*> m_fields;
    std::map<QString, QWidget*> m_insets;
    std::map<QString, QRect> m_places;
};

} // namespace mend::parts
