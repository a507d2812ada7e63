#include "app/parts/sheetview.h"

#include <QEvent>
#include <algorithm>

namespace mend::parts {

namespace {
constexpr int longestLine = 500;
constexpr int barRoom = 10;

const Sheet::Field* fieldOf(const Sheet& sheet, const QString& key)
{
    for (const auto& block : sheet.blocks) {
        const auto* field = std::get_if<Sheet::Field>(&block);
        if (field && field->key == key) {
            return field;
        }
    }
    return nullptr;
}
} // namespace

SheetView::SheetView(TapGate& gate, QWidget* parent) : ScrollView(gate, parent), m_look(lookOf(Theme::Light, Measure()))
{
    setFocusPolicy(Qt::StrongFocus);
}

void SheetView::setLook(const Look& look)
{
    m_look = look;
    setFocusInk(look.tokens().ink, look.measure.px(3));
    setGround(look.tokens().ground);
    compose();
}

void SheetView::setSheet(Sheet sheet)
{
    const bool other = sheet.title != m_sheet.title;
    m_sheet = std::move(sheet);
    std::erase_if(m_fields, [this](const auto& held) {
        if (fieldOf(m_sheet, held.first)) {
            return false;
        }
        held.second->hide();
        held.second->deleteLater(); // it may be the one that is just saying what was typed
        return true;
    });
    if (other) {
        scrollTo(0);
    }
    compose();
}

QLineEdit* SheetView::field(const QString& key) const
{
    const auto found = m_fields.find(key);
    return found == m_fields.end() ? nullptr : found->second;
}

void SheetView::setInset(const QString& key, QWidget* widget)
{
    widget->setParent(this);
    m_insets[key] = widget;
    compose();
}

QLineEdit* SheetView::newField(const QString& key)
{
    auto* line = new QLineEdit(this);
    line->setFrame(false);
    line->setMaxLength(longestLine);
    line->installEventFilter(this);
    connect(line, &QLineEdit::textEdited, this, [this, key](const QString& words) {
        if (const auto* field = fieldOf(m_sheet, key); field && field->edited) {
            const auto edited = field->edited; // what it does may put another sheet here
            edited(words);
        }
    });
    connect(line, &QLineEdit::returnPressed, this, [this, key] { Q_EMIT entered(key); });
    return line;
}

void SheetView::dressFields()
{
    const Tokens& t = m_look.tokens();
    for (const auto& block : m_sheet.blocks) {
        const auto* field = std::get_if<Sheet::Field>(&block);
        if (!field) {
            continue;
        }
        QLineEdit*& line = m_fields[field->key];
        if (!line) {
            line = newField(field->key);
            line->setVisible(true);
        }
        if (line->text() != field->value) {
            line->setText(field->value);
        }
        const QString name = field->unit.isEmpty() ? field->label : field->label + QStringLiteral(", ") + field->unit;
        line->setAccessibleName(name);
        line->setAccessibleDescription(field->fault);
        line->setFont(m_look.type.font(field->large ? Role::CardVerb : Role::Body));
        line->setPlaceholderText(field->large ? field->label : QString());
        line->setInputMethodHints(field->figures ? Qt::ImhPreferNumbers : Qt::ImhNone);
        QPalette colours = line->palette();
        colours.setColor(QPalette::Base, t.card);
        colours.setColor(QPalette::Text, t.ink);
        colours.setColor(QPalette::PlaceholderText, t.ink2);
        colours.setColor(QPalette::Highlight, t.block);
        colours.setColor(QPalette::HighlightedText, t.onBlock);
        line->setPalette(colours);
    }
}

QString SheetView::focusedField() const
{
    const auto found = std::ranges::find_if(m_fields, [](const auto& held) { return held.second->hasFocus(); });
    return found == m_fields.end() ? QString() : found->first;
}

void SheetView::compose()
{
    if (width() <= barRoom || !isVisible()) {
        return; // drawn once it is seen
    }
    dressFields();
    SheetDrawn drawn =
        drawSheet(m_sheet, m_look, width() - barRoom, layoutDirection() == Qt::RightToLeft, focusedField());
    m_places = std::move(drawn.fields);
    setContent({{QPoint(), std::make_shared<const Scene>(std::move(drawn.scene)), {}}}, drawn.height,
               m_look.tokens().hair);
    placeFields();
}

void SheetView::placeFields()
{
    for (const auto& [key, line] : m_fields) {
        if (const auto place = m_places.find(key); place != m_places.end()) {
            line->setGeometry(place->second.translated(0, -offset()));
        }
    }
    for (const auto& [key, widget] : m_insets) {
        const auto place = m_places.find(key);
        widget->setVisible(place != m_places.end());
        if (place != m_places.end()) {
            widget->setGeometry(place->second.translated(0, -offset()));
        }
    }
}

void SheetView::scrolledTo(int) { placeFields(); }

void SheetView::showEvent(QShowEvent* event)
{
    ScrollView::showEvent(event);
    compose();
}

void SheetView::resizeEvent(QResizeEvent* event)
{
    ScrollView::resizeEvent(event);
    compose();
    // What is being typed into stays in sight when the view becomes lower.
    if (const auto typed = m_fields.find(focusedField()); typed != m_fields.end()) {
        const QRect place = typed->second->geometry();
        if (place.top() < 0 || place.bottom() > height()) {
            scrollTo(offset() + place.center().y() - height() / 2);
        }
    }
}

void SheetView::changeEvent(QEvent* event)
{
    ScrollView::changeEvent(event);
    if (event->type() == QEvent::LayoutDirectionChange) {
        compose();
    }
}

bool SheetView::eventFilter(QObject* watched, QEvent* event)
{
    const bool focus = event->type() == QEvent::FocusIn || event->type() == QEvent::FocusOut;
    if (focus && qobject_cast<QLineEdit*>(watched)) {
        const bool taken = ScrollView::eventFilter(watched, event);
        QMetaObject::invokeMethod(
            this, [this] { compose(); }, Qt::QueuedConnection); // once the focus has moved
        if (event->type() == QEvent::FocusIn) {
            const QRect place = static_cast<QLineEdit*>(watched)->geometry();
            if (place.top() < 0 || place.bottom() > height()) {
                scrollTo(offset() + place.center().y() - height() / 2);
            }
        }
        return taken;
    }
    return ScrollView::eventFilter(watched, event);
}

} // namespace mend::parts
