#include "app/photos/demophotos.h"

#include "app/photos/photoimport.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <array>
#include <random>
#include <vector>

namespace mend::photos {

namespace {

constexpr int wide = 1200;
constexpr int high = 900;
constexpr std::chrono::hours cameIn{24 * 9};

/// A number from 0 to 1. The distributions of the library differ between libraries, the engine does not.
double share(std::mt19937& random) { return static_cast<double>(random() % 10'000) / 10'000.0; }
double between(std::mt19937& random, double from, double to) { return from + (to - from) * share(random); }

/// Half the width of a pot from rim to foot, in five steps, and how high it is; in shares of the picture's height.
struct Profile {
    const char* word;
    std::array<double, 5> half;
    double tall;
};
constexpr std::array<Profile, 7> profiles{{{"bowl", {0.33, 0.32, 0.27, 0.17, 0.11}, 0.36},
                                           {"dish", {0.40, 0.36, 0.28, 0.18, 0.14}, 0.20},
                                           {"plate", {0.42, 0.38, 0.30, 0.22, 0.20}, 0.13},
                                           {"jug", {0.14, 0.13, 0.24, 0.25, 0.16}, 0.60},
                                           {"jar", {0.14, 0.25, 0.29, 0.25, 0.17}, 0.56},
                                           {"box", {0.21, 0.23, 0.24, 0.24, 0.22}, 0.34},
                                           {"cup", {0.19, 0.19, 0.18, 0.14, 0.09}, 0.30}}};

struct Glaze {
    const char* word;
    QRgb colour;
};
constexpr std::array<Glaze, 7> glazes{{{"heron", 0xff7f97ab},
                                       {"celadon", 0xff9db39b},
                                       {"blue", 0xff5f7fa8},
                                       {"tea", 0xff6a5142},
                                       {"oil", 0xff8a6a46},
                                       {"ginger", 0xffd9d3c4},
                                       {"lattice", 0xffc9bda4}}};

bool holds(const std::string& name, const char* word)
{
    return QString::fromStdString(name).contains(QLatin1String(word), Qt::CaseInsensitive);
}

const Profile& profileFor(const record::Piece& piece)
{
    for (const Profile& each : profiles) {
        if (holds(piece.benchName, each.word)) {
            return each;
        }
    }
    return profiles.front();
}

QColor glazeFor(const record::Piece& piece)
{
    for (const Glaze& each : glazes) {
        if (holds(piece.benchName, each.word)) {
            return QColor(each.colour);
        }
    }
    return QColor(0xffc2b8a8);
}

/// The pot from the side, turned: both halves alike, the rim an ellipse.
struct Pot {
    QPainterPath outline;
    QRectF rim;
    QRectF box;
};

void addSmooth(QPainterPath& path, const std::vector<QPointF>& through)
{
    for (std::size_t i = 0; i + 1 < through.size(); ++i) {
        const QPointF before = i == 0 ? through[i] : through[i - 1];
        const QPointF after = i + 2 < through.size() ? through[i + 2] : through[i + 1];
        path.cubicTo(through[i] + (through[i + 1] - before) / 6.0, through[i + 1] - (after - through[i]) / 6.0,
                     through[i + 1]);
    }
}

Pot potOf(const Profile& profile)
{
    const double middle = wide / 2.0;
    const double foot = high * 0.80;
    const double top = foot - profile.tall * high;
    const auto y = [&](std::size_t i) { return top + (foot - top) * static_cast<double>(i) / 4.0; };
    Pot pot;
    pot.rim = QRectF(middle - profile.half[0] * high, top - profile.half[0] * high * 0.16, 2 * profile.half[0] * high,
                     profile.half[0] * high * 0.32);
    // From the rim down the left side, and up the right: a smooth line through all five (Catmull-Rom).
    std::vector<QPointF> left;
    std::vector<QPointF> right;
    for (std::size_t i = 0; i < profile.half.size(); ++i) {
        left.emplace_back(middle - profile.half[i] * high, y(i));
        right.emplace_back(middle + profile.half[i] * high, y(i));
    }
    std::reverse(right.begin(), right.end());
    pot.outline.moveTo(left.front());
    addSmooth(pot.outline, left);
    pot.outline.lineTo(right.front());
    addSmooth(pot.outline, right);
    pot.outline.closeSubpath();
    pot.box = pot.outline.boundingRect();
    return pot;
}

void drawCloth(QPainter& painter, std::mt19937& random)
{
    QLinearGradient wall(0, 0, 0, high * 0.72);
    wall.setColorAt(0, QColor(0xe4, 0xde, 0xd2));
    wall.setColorAt(1, QColor(0xcf, 0xc7, 0xb8));
    painter.fillRect(0, 0, wide, high, wall);
    QLinearGradient table(0, high * 0.70, 0, high);
    table.setColorAt(0, QColor(0xb9, 0xae, 0x9c));
    table.setColorAt(1, QColor(0xa2, 0x96, 0x84));
    painter.fillRect(QRectF(0, high * 0.70, wide, high * 0.30), table);
    painter.setPen(QPen(QColor(0, 0, 0, 12), 2));
    for (int i = 0; i < 40; ++i) { // the weave
        const double y = between(random, high * 0.71, high);
        painter.drawLine(QPointF(0, y), QPointF(wide, y + between(random, -6, 6)));
    }
}

/// A break from the rim down, kinked as pots break.
QPainterPath breakLine(const Pot& pot, std::mt19937& random)
{
    QPointF at(between(random, pot.box.left() + pot.box.width() * 0.15, pot.box.right() - pot.box.width() * 0.15),
               pot.rim.center().y() + pot.rim.height() * 0.35);
    const double drift = between(random, -40, 40);
    QPainterPath line(at);
    while (at.y() < pot.box.bottom()) {
        at += QPointF(drift * 0.6 + between(random, -34, 34), between(random, 24, 70));
        line.lineTo(at);
    }
    return line;
}

void drawPot(QPainter& painter, const record::Piece& piece, const Pot& pot, std::mt19937& random, bool mended)
{
    const QColor glaze = glazeFor(piece);
    QRadialGradient shadow(QPointF(wide / 2.0, pot.box.bottom()), pot.box.width() * 0.7);
    shadow.setColorAt(0, QColor(0, 0, 0, 110));
    shadow.setColorAt(1, QColor(0, 0, 0, 0));
    painter.setPen(Qt::NoPen);
    painter.setBrush(shadow);
    painter.drawEllipse(QPointF(wide / 2.0 + 20, pot.box.bottom()), pot.box.width() * 0.62, 46);
    QLinearGradient body(pot.box.left(), 0, pot.box.right(), 0);
    body.setColorAt(0.0, glaze.darker(150));
    body.setColorAt(0.3, glaze.lighter(118));
    body.setColorAt(0.6, glaze);
    body.setColorAt(1.0, glaze.darker(190));
    painter.setBrush(body);
    painter.drawPath(pot.outline);
    painter.setBrush(glaze.darker(170));
    painter.drawEllipse(pot.rim);
    painter.setPen(QPen(glaze.lighter(125), 7));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(pot.rim);
    painter.setClipPath(pot.outline);
    const int breaks = std::clamp(piece.fragments - 1, 1, 5);
    for (int i = 0; i < breaks; ++i) {
        const QPainterPath line = breakLine(pot, random);
        if (mended) {
            painter.setPen(QPen(QColor(0xb0, 0x7a, 0x12), 8, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
            painter.drawPath(line);
            painter.setPen(QPen(QColor(0xf0, 0xd0, 0x80), 2.5, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        } else {
            painter.setPen(QPen(glaze.lighter(160), 7));
            painter.drawPath(line.translated(3, 1));
            painter.setPen(QPen(QColor(0x2a, 0x22, 0x1a), 4));
        }
        painter.drawPath(line);
    }
    painter.setClipping(false);
}

/// A rule with centimetres, as a condition photo has one.
void drawScale(QPainter& painter)
{
    const QRectF bar(wide * 0.06, high * 0.91, 400, 26);
    painter.setPen(QPen(Qt::black, 2));
    painter.setBrush(Qt::white);
    painter.drawRect(bar);
    painter.setBrush(Qt::black);
    for (int i = 0; i < 10; i += 2) {
        painter.drawRect(QRectF(bar.left() + i * 40, bar.top(), 40, bar.height()));
    }
}

QImage photoOf(const record::Piece& piece, unsigned seed, bool mended)
{
    QImage image(wide, high, QImage::Format_RGB32);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    std::mt19937 random(seed);
    drawCloth(painter, random);
    drawPot(painter, piece, potOf(profileFor(piece)), random, mended);
    drawScale(painter);
    return image;
}

std::vector<record::PhotoMark> marksOn(const record::Piece& piece, std::mt19937& random)
{
    std::vector<record::PhotoMark> marks;
    const Pot pot = potOf(profileFor(piece));
    const auto place = [&](record::MarkKind kind, double down, const char* note) {
        const double x =
            between(random, pot.box.left() + pot.box.width() * 0.3, pot.box.right() - pot.box.width() * 0.3);
        const double y = pot.box.top() + pot.box.height() * down;
        marks.push_back({kind, int(x / wide * 10'000), int(y / high * 10'000), note});
    };
    place(record::MarkKind::Chip, 0.06, "rim");
    place(record::MarkKind::Crack, 0.5, "");
    if (piece.id.value() % 2 == 0) {
        place(record::MarkKind::OldMend, 0.75, "brown glue");
    }
    return marks;
}

} // namespace

std::vector<service::DemoPhoto> drawDemoPhotos(const bench::Roster& roster, Instant now)
{
    std::vector<service::DemoPhoto> photos;
    for (const record::Piece& piece : roster.pieces) {
        const auto seed = static_cast<unsigned>(piece.id.value()) * 7919U;
        std::mt19937 random(seed + 1);
        const auto add = [&](const char* purpose, bool mended, Instant taken, std::vector<record::PhotoMark> marks) {
            auto ready = readyPhoto(photoOf(piece, seed, mended));
            if (!ready) {
                return; // a pot without a photo is a pot all the same
            }
            service::DemoPhoto photo;
            photo.working = ready.value().working;
            photo.thumbnail = ready.value().thumbnail;
            photo.noted.use.piece = piece.id;
            photo.noted.use.purpose = purpose;
            photo.noted.note.taken = taken;
            photo.noted.note.marks = std::move(marks);
            photos.push_back(std::move(photo));
        };
        add(record::conditionPhoto, false, now - cameIn, marksOn(piece, random));
    }
    return photos;
}

} // namespace mend::photos
