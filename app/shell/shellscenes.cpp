#include "app/shell/shellscenes.h"

#include "app/bench/cardscene.h"
#include "app/parts/seamdrawing.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <algorithm>

namespace mend::app {

namespace {

using parts::Hit;
using parts::Role;
using parts::Scribe;
using Weight = Scribe::Button::Weight;

// What a translator finds these words under.
class ShellWords {
    Q_DECLARE_TR_FUNCTIONS(ShellWords)
};

int railRow(const parts::Look& look) { return std::max(look.measure.px(64), look.measure.mm(parts::otherActMm)); }

} // namespace

int railWidth(const parts::Look& look, const std::vector<RailWord>& words, bool asButton)
{
    if (asButton) {
        return look.measure.mm(parts::benchActMm) + look.measure.px(8);
    }
    double widest = look.measure.px(60);
    for (const RailWord& each : words) {
        widest = std::max(widest, look.type.widths(Role::RailHere).of(each.word));
    }
    return static_cast<int>(widest) + look.measure.px(24 + 28);
}

int railHeight(const parts::Look& look, std::size_t words)
{
    return railRow(look) * static_cast<int>(words) + look.measure.px(20);
}

parts::Scene railScene(const parts::Look& look, QSize size, bool mirrored, const std::vector<RailWord>& words,
                       const QString& here, bool asButton, const std::function<void(const QString&)>& go)
{
    Scribe scribe(look, size, mirrored);
    const auto& t = look.tokens();
    scribe.line({size.width() - 0.5, 0.0}, {size.width() - 0.5, double(size.height())}, t.edge, 1.0, t.ground,
                Qt::SolidLine, false);
    if (asButton) {
        Scribe::Button button;
        const int side = look.measure.mm(parts::benchActMm);
        button.label = ShellWords::tr("Spaces");
        button.role = Role::Body;
        button.hit.key = QStringLiteral("rail");
        button.hit.name = button.label;
        button.hit.act = [go] { go(QString()); };
        button.hit.rect = QRect(look.measure.px(4), look.measure.px(8), side, side);
        scribe.button(button);
        return scribe.take();
    }
    int y = look.measure.px(20);
    const int row = railRow(look);
    for (const RailWord& each : words) {
        const bool isHere = each.key == here;
        if (isHere) {
            scribe.fill({0.0, double(y), double(look.measure.px(6)), double(row)}, t.ink);
        }
        scribe.text({double(look.measure.px(24)), double(y), double(size.width() - look.measure.px(32)), double(row)},
                    each.word, {isHere ? Role::RailHere : Role::RailWord, isHere ? t.ink : t.ink2, t.ground});
        Hit hit;
        hit.key = QStringLiteral("rail/") + each.key;
        hit.rect = QRect(0, y, size.width() - 1, row);
        hit.name = each.word;
        hit.act = [go, key = each.key] { go(key); };
        hit.chosen = isHere;
        scribe.hit(hit);
        y += row;
    }
    return scribe.take();
}

int bannerHeight(const parts::Look& look) { return look.measure.mm(parts::otherActMm) + 2 * look.measure.px(5); }

parts::Scene bannerScene(const parts::Look& look, QSize size, bool mirrored, const Banner& banner,
                         const std::function<void(const QString&)>& act)
{
    Scribe scribe(look, size, mirrored);
    const auto& t = look.tokens();
    const int margin = look.measure.px(24);
    const int pad = look.measure.px(5);
    scribe.fill({0.0, 0.0, double(size.width()), double(size.height())}, t.card);
    scribe.frame({0.0, 0.0, double(size.width()), double(size.height())}, t.ink, look.measure.px(2), t.ground);
    int right = size.width() - margin;
    if (!banner.act.isEmpty()) {
        Scribe::Button button;
        button.label = banner.act;
        button.role = Role::BodyBold;
        button.weight = Weight::Strong;
        button.hit.key = QStringLiteral("banner/") + banner.key;
        button.hit.name = ShellWords::tr("%1: %2").arg(banner.act, banner.words);
        button.hit.act = [act, key = banner.key] { act(key); };
        const int wide = std::max(look.measure.mm(parts::otherActMm),
                                  int(scribe.width(banner.act, Role::BodyBold)) + look.measure.px(40));
        button.hit.rect = QRect(right - wide, pad, wide, size.height() - 2 * pad);
        scribe.button(button);
        right -= wide + look.measure.px(16);
    }
    const QRectF words(margin, 0.0, right - margin, size.height());
    if (scribe.width(banner.words, Role::BodyBold) <= words.width()) {
        scribe.text(words, banner.words, {Role::BodyBold, t.ink, t.card});
    } else { // two smaller lines rather than one cut short
        const double row = scribe.lineHeight(Role::ReasonBold);
        const bool isOne = scribe.width(banner.words, Role::ReasonBold) <= words.width();
        const double high = isOne ? row : std::min(2.0 * row, words.height());
        scribe.lines({words.left(), (size.height() - high) / 2.0, words.width(), high}, banner.words,
                     {Role::ReasonBold, t.ink, t.card}, 2);
    }
    Hit said;
    said.key = QStringLiteral("banner/words/") + banner.key;
    said.rect = words.toRect();
    said.name = banner.words;
    said.kind = parts::HitKind::Words;
    scribe.hit(said);
    return scribe.take();
}

int urgentHeight(const parts::Look& look) { return look.measure.mm(parts::benchActMm) + 2 * look.measure.px(12); }

const bench::Card* mostUrgent(const Picture& picture)
{
    const auto found = std::ranges::find_if(picture.board.cards, [](const bench::Card& card) {
        return card.counts == bench::CountKind::StartBy || card.counts == bench::CountKind::Counted ||
               card.counts == bench::CountKind::Late;
    });
    return found == picture.board.cards.end() ? nullptr : &*found;
}

parts::Scene urgentScene(const bench::Card& card, const Picture& picture, QSize size, bool mirrored, Hands& hands)
{
    Scribe scribe(picture.look, size, mirrored);
    const auto& t = picture.look.tokens();
    const CardFace face = faceOf(card, picture);
    const double high = size.height();
    scribe.fill({0.0, 0.0, double(size.width()), high}, t.block);
    const int margin = scribe.px(24);
    const int pad = scribe.px(12);
    double right = size.width() - margin;
    if (!card.acts.empty()) {
        const bench::CardAct& act = card.acts.front();
        Scribe::Button button;
        button.label = service::actWords(act);
        button.role = Role::CardAct;
        button.weight = Weight::OnBlock;
        button.hit.key = actKey(card.piece, act);
        button.hit.name = ShellWords::tr("%1, %2").arg(button.label, service::text(card.benchName));
        button.hit.kind = parts::HitKind::BenchAct;
        button.hit.act = [&hands, piece = card.piece, act] { hands.act(piece, act); };
        const int wide = std::max(scribe.mm(parts::benchActMm), std::min(scribe.px(180), size.width() / 3));
        button.hit.rect = QRect(int(right) - wide, pad, wide, size.height() - 2 * pad);
        scribe.button(button);
        right -= wide + scribe.px(20);
    }
    const double digits = scribe.width(face.count.digits, Role::BlockVerb);
    scribe.text({double(margin), 0.0, digits, high}, face.count.digits, {Role::BlockVerb, t.onBlock, t.block});
    const double left = margin + digits + scribe.px(22);
    const double verb = scribe.lineHeight(Role::CardVerb);
    const double row = scribe.lineHeight(Role::Body);
    const double top = (high - verb - row - scribe.px(18)) / 2.0;
    scribe.text({left, top, right - left, verb}, face.act, {Role::CardVerb, t.onBlock, t.block});
    scribe.text({left, top + verb, right - left, row}, service::joined({face.name, face.count.below, face.window}),
                {Role::Body, t.onBlock2, t.block});
    const auto axis = parts::axisOf(card, picture.now, left, right - left);
    parts::drawSeam(scribe, card.seam, axis, top + verb + row + scribe.px(9), scribe.px(9), parts::seamInk(t, true),
                    parts::SeamDetail::Card);
    Hit whole;
    whole.key = QStringLiteral("urgent");
    whole.rect = QRect(0, 0, int(right), size.height());
    whole.name = face.sentence;
    whole.kind = parts::HitKind::Card;
    scribe.hit(whole);
    return scribe.take();
}

} // namespace mend::app
