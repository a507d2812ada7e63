#include "app/parts/sheet.h"

#include "app/parts/outline.h"
#include "app/parts/scribe.h"

#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <utility>

namespace mend::parts {

namespace {

using Weight = Scribe::Button::Weight;

/// The seam that marks what is chosen: full at its beginning, then running out.
QPainterPath chosenSeam(const QRectF& rect)
{
    const double middle = rect.center().y();
    QPainterPath seam(rect.topLeft());
    seam.lineTo(rect.left() + rect.width() * 0.4, rect.top());
    seam.lineTo(rect.right(), middle);
    seam.lineTo(rect.left() + rect.width() * 0.4, rect.bottom());
    seam.lineTo(rect.bottomLeft());
    seam.closeSubpath();
    return seam;
}

QString sentence(std::initializer_list<QString> parts)
{
    QStringList said;
    std::ranges::copy_if(parts, std::back_inserter(said), [](const QString& part) { return !part.isEmpty(); });
    return said.join(QStringLiteral(", "));
}

class SheetDrawing {
public:
    SheetDrawing(const Look& look, int width, bool mirrored, QString focused)
        : m_scribe(look, QSize(width, 100000), mirrored), m_mirrored(mirrored), m_focused(std::move(focused)),
          m_width(width), m_margin(look.measure.px(width < look.measure.px(400) ? 12 : 24)),
          m_gap(std::max(look.measure.mm(gapMm), look.measure.px(12))), m_y(look.measure.px(16)),
          m_finger(std::max(look.measure.mm(otherActMm), look.measure.px(46)))
    {
    }

    SheetDrawn draw(const Sheet& sheet)
    {
        title(sheet);
        for (std::size_t i = 0; i < sheet.blocks.size(); ++i) {
            i += pair(sheet.blocks, i) ? 1 : 0;
            std::visit([this](const auto& each) { add(each); }, sheet.blocks[i]);
        }
        return {m_scribe.take(), std::max(m_y, m_columnEnd) + m_gap, std::move(m_fields)};
    }

private:
    const Tokens& tokens() const { return m_scribe.tokens(); }
    double left() const { return m_margin + m_column; }
    double wide() const { return m_columnWide > 0.0 ? m_columnWide : m_width - 2.0 * m_margin; }
    Scribe::Ink ink(Role role) const { return {role, tokens().ink, tokens().ground}; }
    Scribe::Ink quiet(Role role) const { return {role, tokens().ink2, tokens().ground}; }

    /// Draws a line to type into that has another beside it; false where the two have no room or are none. The
    /// other is left to be drawn.
    bool pair(const std::vector<Sheet::Block>& blocks, std::size_t at)
    {
        const auto* first = std::get_if<Sheet::Field>(&blocks[at]);
        const auto* second = at + 1 < blocks.size() ? std::get_if<Sheet::Field>(&blocks[at + 1]) : nullptr;
        m_column = m_columnWide = 0.0;
        m_y = std::max(m_y, std::exchange(m_columnEnd, 0));
        if (!first || !second || !second->pair || wide() < m_scribe.px(520)) {
            return false;
        }
        const int top = m_y;
        const double half = std::floor((std::min(wide(), double(m_scribe.px(760))) - m_gap) / 2.0);
        m_columnWide = half;
        add(*first);
        m_columnEnd = std::exchange(m_y, top);
        m_column = half + m_gap;
        return true;
    }

    void readOut(const QString& words, const QRectF& rect)
    {
        Hit hit;
        hit.key = QStringLiteral("sheet/words/%1").arg(m_readOut++);
        hit.rect = rect.toAlignedRect();
        hit.name = words;
        hit.kind = HitKind::Words;
        m_scribe.hit(std::move(hit));
    }

    /// Words in as many lines as they need; read out as one.
    double paragraph(const QString& words, const Scribe::Ink& with, double from, double width)
    {
        const double used = m_scribe.lines({from, double(m_y), width, 100000.0}, words, with, 200);
        readOut(words, {from, double(m_y), width, used});
        return used;
    }

    void title(const Sheet& sheet)
    {
        if (sheet.title.isEmpty() && sheet.back.key.isEmpty()) {
            return;
        }
        double room = wide();
        if (!sheet.back.key.isEmpty()) {
            const double backWide =
                std::min(room / 2.0, m_scribe.width(sheet.back.label, Role::Body) + m_scribe.px(36));
            place(sheet.back, {}, QRectF(left() + room - backWide, m_y, backWide, m_finger), false);
            room -= backWide + m_gap;
        }
        const double row = m_scribe.lineHeight(Role::BlockAct);
        const bool long_ = m_scribe.width(sheet.title, Role::BlockAct) > room;
        const Role role = long_ ? Role::CardVerb : Role::BlockAct;
        const double used = sheet.title.isEmpty() ? 0.0 : paragraph(sheet.title, ink(role), left(), room);
        const double end = m_scribe.width(sheet.title, role) + m_scribe.px(20);
        const bool fits = !long_ && end + m_scribe.width(sheet.beside, Role::Reason) <= room;
        if (fits && !sheet.beside.isEmpty()) {
            const QRectF rect(left() + end, m_y + m_scribe.px(4), room - end, row - m_scribe.px(4));
            m_scribe.text(rect, sheet.beside, quiet(Role::Reason));
            readOut(sheet.beside, rect);
        }
        m_y += int(std::ceil(used));
        if (!fits && !sheet.beside.isEmpty()) {
            m_y += int(paragraph(sheet.beside, quiet(Role::Reason), left(), room));
        }
        m_y = std::max(m_y, sheet.back.key.isEmpty() ? 0 : m_scribe.px(16) + m_finger) + m_scribe.px(10);
    }

    void add(const Sheet::Heading& heading)
    {
        m_y += m_scribe.px(14);
        m_y += int(paragraph(heading.words, ink(Role::BodyBold), left(), wide())) + m_scribe.px(6);
    }

    void add(const Sheet::Words& words)
    {
        const auto with = words.tone == Sheet::Tone::Quiet   ? quiet(Role::Reason)
                          : words.tone == Sheet::Tone::Grave ? ink(Role::BodyBold)
                                                             : ink(Role::Body);
        const double readable = std::min(wide(), double(m_scribe.px(760)));
        m_y += int(paragraph(words.words, with, left(), readable)) + m_scribe.px(8);
    }

    void add(const Sheet::Row& row)
    {
        const double sight = row.sight ? m_scribe.px(56) : 0.0;
        const double from = left() + row.depth * m_scribe.px(20) + (row.sight ? sight + m_scribe.px(14) : 0.0);
        const double width = left() + wide() - from;
        const double valueWide =
            row.value.isEmpty() ? 0.0
                                : std::min(width * 0.6, m_scribe.width(row.value, Role::BodyBold) + m_scribe.px(4));
        const double labelWide = width - valueWide - (valueWide > 0.0 ? m_gap : 0);
        const bool oneLine = row.below.isEmpty() && m_scribe.width(row.label, Role::BodyBold) <= labelWide &&
                             m_scribe.width(row.value, Role::BodyBold) <= valueWide;
        const double pad = row.act && oneLine ? (m_finger - m_scribe.lineHeight(Role::BodyBold)) / 2.0 : m_scribe.px(7);
        const int top = m_y;
        const double end = top + pad +
                           m_scribe.lines({from, top + pad, labelWide, 10000.0}, row.label,
                                          ink(row.act ? Role::BodyBold : Role::Body), 6);
        double valueEnd = top + pad;
        if (valueWide > 0.0) {
            valueEnd += m_scribe.lines({from + width - valueWide, top + pad, valueWide, 10000.0}, row.value,
                                       ink(Role::BodyBold), 4, Qt::AlignRight);
        }
        double bottom = std::max(end, valueEnd);
        if (!row.below.isEmpty()) {
            bottom += m_scribe.lines({from, bottom, width, 10000.0}, row.below, quiet(Role::Reason), 8);
        }
        bottom = std::max({bottom + pad, double(top + (row.act ? m_finger : 0)), row.sight ? top + sight + pad : 0.0});
        const int high = int(std::ceil(bottom)) - top;
        Hit hit;
        hit.key = row.key;
        const double begin = row.sight ? from - sight - m_scribe.px(14) : from;
        if (row.sight) {
            draw(*row.sight, {begin, top + (high - sight) / 2.0, sight, sight});
        }
        hit.rect = QRectF(begin, top, from + width - begin, high).toAlignedRect();
        hit.name = sentence({row.label, row.value});
        hit.more = row.below;
        hit.kind = row.act ? HitKind::Other : HitKind::Words;
        hit.act = row.act;
        hit.chosen = row.chosen;
        m_scribe.hit(std::move(hit));
        m_y = top + high;
        if (row.chosen) {
            m_scribe.path(chosenSeam({begin, double(m_y), from + width - begin, double(m_scribe.px(6))}), tokens().gold,
                          tokens().ground);
        } else {
            m_scribe.line({begin, double(m_y)}, {from + width, double(m_y)}, tokens().edge, m_scribe.px(1),
                          tokens().ground, Qt::SolidLine, false);
        }
        m_y += m_scribe.px(6);
    }

    void add(const Sheet::Field& field)
    {
        if (!field.large) { // it says itself what it is for
            m_y += int(paragraph(field.label, quiet(Role::Reason), left(), wide())) + m_scribe.px(3);
        }
        const bool here = field.key == m_focused;
        const double most = field.unit.isEmpty() ? m_scribe.px(560) : m_scribe.px(220);
        const int high = field.large ? std::max(m_finger, m_scribe.px(62)) : m_finger;
        const QRectF rect(left(), m_y, std::min(wide(), most), high);
        m_scribe.fill(rect, tokens().card, m_scribe.px(6));
        m_scribe.frame(rect, here ? tokens().ink : tokens().hair, m_scribe.px(here ? 3 : 1.4), tokens().card,
                       m_scribe.px(6));
        if (!field.unit.isEmpty()) {
            const QRectF unit(rect.right() + m_scribe.px(12), m_y, left() + wide() - rect.right() - m_scribe.px(12),
                              high);
            m_scribe.text(unit, field.unit, ink(Role::Body));
            readOut(field.unit, unit);
        }
        const QRectF inner = rect.adjusted(m_scribe.px(10), m_scribe.px(4), -m_scribe.px(10), -m_scribe.px(4));
        m_fields[field.key] = mirrored(inner).toAlignedRect();
        m_y += high + m_scribe.px(6);
        if (!field.fault.isEmpty()) {
            m_y += int(paragraph(field.fault, ink(Role::ReasonBold), left(), wide())) + m_scribe.px(4);
        }
        m_y += m_scribe.px(6);
    }

    void add(const Sheet::Choices& block)
    {
        m_y += block.bench ? m_gap : 0; // nothing to be hit by mistake above an act of the bench
        if (!block.label.isEmpty()) {
            m_y += int(paragraph(block.label, quiet(Role::Reason), left(), wide())) + m_scribe.px(3);
        }
        const int count = static_cast<int>(block.choices.size());
        if (count == 0) {
            return;
        }
        const bool anyBelow =
            std::ranges::any_of(block.choices, [](const Sheet::Choice& choice) { return !choice.below.isEmpty(); });
        const int high = block.bench ? std::max(m_scribe.mm(benchActMm), m_scribe.px(76))
                                     : std::max(m_finger, m_scribe.px(anyBelow ? 62 : 48));
        const int columns = columnsFor(block, count);
        const double cell = std::floor(std::min((wide() - m_gap * (columns - 1)) / columns, double(m_scribe.px(300))));
        const int step = high + m_gap;
        for (int i = 0; i < count; ++i) {
            const QRectF rect(left() + i % columns * (cell + m_gap), m_y + i / columns * step, cell, high);
            place(block.choices[static_cast<std::size_t>(i)], block.label, rect, block.bench);
        }
        m_y += (count + columns - 1) / columns * step + m_scribe.px(2);
    }

    /// As many beside each other as their words allow; rows as even as can be.
    int columnsFor(const Sheet::Choices& block, int count) const
    {
        double widest = block.bench ? std::max(m_scribe.mm(benchActMm), m_scribe.px(120)) : m_scribe.px(64);
        for (const auto& choice : block.choices) {
            const double words = m_scribe.width(choice.label, choice.strong ? Role::CardAct : Role::Body);
            const double share = block.bench && choice.label.contains(QLatin1Char(' ')) ? 0.65 : 1.0;
            widest = std::max({widest, words * share + m_scribe.px(26),
                               m_scribe.width(choice.below, Role::Reason) + m_scribe.px(20)});
        }
        const int most = std::clamp(int((wide() + m_gap) / (widest + m_gap)), 1, 7);
        const int rows = (count + most - 1) / most;
        return (count + rows - 1) / rows;
    }

    void place(const Sheet::Choice& choice, const QString& label, const QRectF& rect, bool bench)
    {
        Scribe::Button button;
        button.label = choice.label;
        button.below = choice.below;
        button.role = choice.strong ? Role::CardAct : Role::Body;
        button.weight = !choice.act ? Weight::Barred : choice.strong || choice.chosen ? Weight::Strong : Weight::Plain;
        button.hit.key = choice.key;
        button.hit.name = sentence({choice.label, choice.below});
        button.hit.more = label;
        button.hit.kind = bench ? HitKind::BenchAct : HitKind::Other;
        button.hit.act = choice.act;
        button.hit.chosen = choice.chosen;
        button.hit.rect = rect.toAlignedRect();
        m_scribe.button(button);
        if (choice.chosen) {
            const double pad = m_scribe.px(10);
            m_scribe.path(chosenSeam({rect.left() + pad, rect.bottom() - m_scribe.px(8), rect.width() - 2.0 * pad,
                                      double(m_scribe.px(5))}),
                          tokens().gold, tokens().card);
        }
    }

    void add(const Sheet::Ruler& ruler)
    {
        // Real millimetres of the glass: how large somebody likes the rest does not count here.
        const double pixels = 1.0 / m_scribe.look().measure.inMillimetres(1.0);
        const QRectF rect(left(), m_y, std::round(ruler.millimetres.width() * pixels),
                          std::round(ruler.millimetres.height() * pixels));
        m_scribe.fill(rect, tokens().card, m_scribe.px(12));
        m_scribe.frame(rect, tokens().ink, m_scribe.px(2), tokens().card, m_scribe.px(12));
        readOut(ruler.name, rect);
        m_y += int(rect.height()) + m_gap;
    }

    void draw(const Sheet::Sight& sight, const QRectF& rect)
    {
        if (sight.photo.isNull()) {
            drawOutline(m_scribe, rect, sight.shape, sight.mended, false);
        } else {
            m_scribe.picture(rect, sight.photo);
        }
    }

    void add(const Sheet::Portrait& portrait)
    {
        const int side = m_scribe.px(106);
        const int top = m_y;
        draw(portrait.sight, {left(), double(top), double(side), double(side)});
        const double from = left() + side + m_scribe.px(20);
        const double width = left() + wide() - from;
        m_y += int(paragraph(portrait.name, ink(Role::BlockAct), from, width)) + m_scribe.px(4);
        for (const Sheet::Words& line : portrait.lines) {
            m_y += int(paragraph(line.words, line.tone == Sheet::Tone::Quiet ? quiet(Role::Body) : ink(Role::Body),
                                 from, width)) +
                   m_scribe.px(2);
        }
        m_y = std::max(m_y, top + side) + m_scribe.px(18);
    }

    void add(const Sheet::Facts& facts)
    {
        const int columns = wide() >= m_scribe.px(520) ? 2 : 1;
        const double gap = m_scribe.px(28);
        const double cell = std::floor((wide() - gap * (columns - 1)) / columns);
        int bottom = m_y;
        for (std::size_t i = 0; i < facts.all.size(); ++i) {
            const auto& fact = facts.all[i];
            const int column = static_cast<int>(i) % columns;
            const int top = column == 0 ? bottom : m_y;
            m_y = top;
            const double from = left() + column * (cell + gap);
            const double labelWide = std::min(cell * 0.5, m_scribe.width(fact.label, Role::Body) + 1.0);
            const double pad = m_scribe.px(8);
            const double a = m_scribe.lines({from, top + pad, labelWide, 10000.0}, fact.label, quiet(Role::Body), 3);
            const double b = m_scribe.lines({from + labelWide + m_gap, top + pad, cell - labelWide - m_gap, 10000.0},
                                            fact.value, ink(Role::BodyBold), 6, Qt::AlignRight);
            const double end = top + pad + std::max(a, b) + pad;
            readOut(sentence({fact.label, fact.value}), {from, double(top), cell, end - top});
            m_scribe.line({from, end}, {from + cell, end}, tokens().edge, m_scribe.px(1), tokens().ground,
                          Qt::SolidLine, false);
            bottom = std::max(bottom, int(std::ceil(end)) + m_scribe.px(1));
        }
        m_y = bottom + m_scribe.px(14);
    }

    void add(const Sheet::Inset& inset)
    {
        const QRectF rect(left(), m_y, std::min(wide(), double(m_scribe.px(inset.widest))), m_scribe.px(inset.height));
        m_fields[inset.key] = mirrored(rect).toAlignedRect();
        m_y += int(rect.height()) + m_scribe.px(10);
    }

    void add(const Sheet::Pictures& block)
    {
        const double side = std::min(wide(), double(m_scribe.px(block.side)));
        const int across = std::max(1, int((wide() + m_gap) / (side + m_gap)));
        double rowHigh = 0.0;
        int column = 0;
        for (const auto& picture : block.pictures) {
            if (column == across) {
                m_y += int(std::ceil(rowHigh)) + m_gap;
                column = 0;
                rowHigh = 0.0;
            }
            rowHigh = std::max(rowHigh, place(picture, {left() + column * (side + m_gap), double(m_y), side, side}));
            ++column;
        }
        m_y += block.pictures.empty() ? 0 : int(std::ceil(rowHigh)) + m_gap;
    }

    /// One photo, whole and in the middle of its square. Gives its height with the words under it.
    double place(const Sheet::Picture& picture, const QRectF& frame)
    {
        m_scribe.fill(frame, tokens().plinth, m_scribe.px(6));
        if (!picture.image.isNull()) {
            const QSizeF size = QSizeF(picture.image.size()).scaled(frame.size(), Qt::KeepAspectRatio);
            QRectF inner(QPointF(), size);
            inner.moveCenter(frame.center());
            m_scribe.picture(inner, picture.image);
        }
        if (picture.act) {
            m_scribe.frame(frame, tokens().hair, m_scribe.px(1.4), tokens().ground, m_scribe.px(6));
        }
        double high = frame.height();
        if (!picture.caption.isEmpty()) {
            const double line = m_scribe.lineHeight(Role::Reason);
            high += m_scribe.px(4) +
                    m_scribe.lines({frame.left(), frame.bottom() + m_scribe.px(4), frame.width(), 3 * line},
                                   picture.caption, quiet(Role::Reason), 3);
        }
        Hit hit;
        hit.key = picture.key;
        hit.rect = QRectF(frame.topLeft(), QSizeF(frame.width(), high)).toAlignedRect();
        hit.name = picture.caption;
        hit.kind = picture.act ? HitKind::Other : HitKind::Words;
        hit.act = picture.act;
        m_scribe.hit(std::move(hit));
        return high;
    }

    QRectF mirrored(const QRectF& rect) const
    {
        return m_mirrored ? QRectF(m_width - rect.right(), rect.top(), rect.width(), rect.height()) : rect;
    }

    Scribe m_scribe;
    bool m_mirrored;
    QString m_focused;
    int m_width;
    int m_margin;
    int m_gap;
    int m_y;
    int m_finger;
    double m_column = 0.0;     ///< of a pair: where the one that is drawn stands
    double m_columnWide = 0.0; ///< 0: the whole width
    int m_columnEnd = 0;       ///< how far down the first of the pair went
    int m_readOut = 0;
    std::map<QString, QRect> m_fields;
};

} // namespace

SheetDrawn drawSheet(const Sheet& sheet, const Look& look, int width, bool mirrored, const QString& focused)
{
    return SheetDrawing(look, width, mirrored, focused).draw(sheet);
}

} // namespace mend::parts
