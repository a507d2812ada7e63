#include "app/settings/settingsspace.h"

#include <algorithm>

namespace mend::app {

using parts::Sheet;
using parts::Theme;

namespace {

/// A bank card: ISO/IEC 7810, size ID-1, in millimetres.
constexpr QSizeF bankCard(85.60, 53.98);
/// A screen reads 70 to 350 dots an inch; a card held against anything else is not a card.
constexpr double leastDpi = 70.0;
constexpr double mostDpi = 350.0;

} // namespace

Sheet SettingsSpace::soundSheet()
{
    const SoundSettings& sound = m_now.sound;
    Sheet sheet;
    sheet.title = tr("Sound");
    if (sound.off) {
        sheet.say(tr("Sound is off. A line stands across the window as long as it is."), Sheet::Tone::Grave);
    }
    if (!sound.works) {
        sheet.say(tr("No device takes the sound now. Every alert is still seen."), Sheet::Tone::Grave);
    }
    if (m_asking) {
        sheet.head(tr("Did you hear it, from where you work?"));
        const auto answer = [this](bool heard) {
            return [this, heard] {
                m_asking = false;
                m_now.sound.heard = heard ? SoundSettings::Heard::Yes : SoundSettings::Heard::No;
                refresh();
                Q_EMIT soundHeard(heard);
            };
        };
        Sheet::Choices answers;
        answers.bench = true;
        answers.choices = {
            {QStringLiteral("sound/yes"), tr("I heard it"), {}, answer(true)},
            {QStringLiteral("sound/no"), tr("I heard nothing"), {}, answer(false)},
            {QStringLiteral("sound/again"), tr("Play it again"), {}, [this] { Q_EMIT soundTestWanted(); }}};
        sheet.add(answers);
    } else {
        if (sound.heard == SoundSettings::Heard::No) {
            sheet.say(tr("It was not heard: try it louder, or another device."), Sheet::Tone::Grave);
        }
        Sheet::Choices test;
        test.bench = true;
        test.choices = {{QStringLiteral("sound/test"),
                         tr("Play the most urgent sound"),
                         {},
                         [this] {
                             askHeard();
                             Q_EMIT soundTestWanted();
                         },
                         true}};
        sheet.add(test);
    }
    Sheet::Choices switches;
    switches.label = tr("Whether alerts sound");
    for (const bool off : {false, true}) {
        switches.choices.push_back({QStringLiteral("sound/off/%1").arg(int(off)),
                                    off ? tr("Off: alerts are only seen") : tr("On"),
                                    {},
                                    [this, off] {
                                        m_now.sound.off = off;
                                        refresh();
                                        Q_EMIT soundOffChosen(off);
                                    },
                                    false,
                                    off == sound.off});
    }
    sheet.add(switches);
    Sheet::Choices levels;
    levels.label = tr("How loud");
    for (const int percent : {40, 55, 70, 85, 100}) {
        levels.choices.push_back({QStringLiteral("sound/level/%1").arg(percent),
                                  tr("%1 %").arg(percent),
                                  {},
                                  [this, percent] {
                                      m_now.sound.level = percent;
                                      refresh();
                                      Q_EMIT soundLevelChosen(percent);
                                  },
                                  false,
                                  percent == sound.level});
    }
    sheet.add(levels);
    sheet.head(tr("Where it is played"));
    QStringList devices = sound.devices;
    devices.prepend(QString());
    for (const QString& device : devices) {
        sheet.add(Sheet::Row{QStringLiteral("sound/device/") + device,
                             device.isEmpty() ? tr("Wherever this machine plays") : device,
                             {},
                             {},
                             [this, device] {
                                 m_now.sound.device = device;
                                 refresh();
                                 Q_EMIT soundDeviceChosen(device);
                             },
                             device == sound.device});
    }
    return sheet;
}

Sheet SettingsSpace::lookSheet()
{
    const LookWishes& look = m_now.look;
    Sheet sheet;
    sheet.title = tr("Look");
    Sheet::Choices themes;
    themes.label = tr("Colours");
    for (const auto& [theme, words] : {std::pair{Theme::Light, tr("Light")}, std::pair{Theme::Dark, tr("Dark")},
                                       std::pair{Theme::HighContrast, tr("Black and white")}}) {
        themes.choices.push_back({QStringLiteral("look/theme/%1").arg(int(theme)),
                                  words,
                                  {},
                                  [this, theme = theme] {
                                      LookWishes wished = m_now.look;
                                      wished.theme = theme;
                                      wish(wished);
                                  },
                                  false,
                                  theme == look.theme});
    }
    sheet.add(themes);
    Sheet::Choices sizes;
    sizes.label = tr("Size of everything");
    for (const int percent : {100, 125, 150, 175, 200}) {
        sizes.choices.push_back({QStringLiteral("look/scale/%1").arg(percent),
                                 tr("%1 %").arg(percent),
                                 {},
                                 [this, percent] {
                                     LookWishes wished = m_now.look;
                                     wished.scale = percent / 100.0;
                                     wish(wished);
                                 },
                                 false,
                                 qRound(look.scale * 100.0) == percent});
    }
    sheet.add(sizes);
    Sheet::Choices motion;
    motion.label = tr("What flashes when an alert calls");
    for (const bool still : {false, true}) {
        motion.choices.push_back({QStringLiteral("look/motion/%1").arg(int(still)),
                                  still ? tr("Nothing: it stands still") : tr("The block's border"),
                                  {},
                                  [this, still] {
                                      LookWishes wished = m_now.look;
                                      wished.reduceMotion = still;
                                      wish(wished);
                                  },
                                  false,
                                  look.reduceMotion == still});
    }
    sheet.add(motion);
    return sheet;
}

Sheet SettingsSpace::screenSheet()
{
    Sheet sheet;
    sheet.title = tr("Size of the screen");
    sheet.say(tr("Hold a bank card against the frame. Make the frame as large as the card; every button is then as "
                 "large as a gloved thumb."));
    const double dpi = m_now.look.dpi.value_or(std::clamp(m_now.screenDpi, leastDpi, mostDpi));
    Sheet::Choices steps;
    for (const auto& [percent, words] : {std::pair{-5.0, tr("Much smaller")}, std::pair{-1.0, tr("Smaller")},
                                         std::pair{1.0, tr("Larger")}, std::pair{5.0, tr("Much larger")}}) {
        const double then = dpi * (1.0 + percent / 100.0);
        const bool good = then >= leastDpi && then <= mostDpi;
        steps.choices.push_back({QStringLiteral("screen/%1").arg(percent),
                                 words,
                                 {},
                                 good ? std::function<void()>([this, then] {
                                     LookWishes wished = m_now.look;
                                     wished.dpi = then;
                                     wish(wished);
                                 })
                                      : nullptr});
    }
    sheet.add(steps);
    sheet.add(Sheet::Ruler{bankCard, tr("A frame as large as a bank card")});
    Sheet::Choices asItSays;
    asItSays.choices = {{QStringLiteral("screen/own"), tr("Take what the screen says"),
                         tr("%1 dots an inch").arg(qRound(m_now.screenDpi)),
                         [this] {
                             LookWishes wished = m_now.look;
                             wished.dpi.reset();
                             wish(wished);
                         },
                         false, !m_now.look.dpi}};
    sheet.add(asItSays);
    return sheet;
}

Sheet SettingsSpace::handsSheet()
{
    Sheet sheet;
    sheet.title = tr("Hands and pedal");
    Sheet::Choices sides;
    sides.label = tr("Where the buttons of a card stand");
    for (const bool left : {false, true}) {
        sides.choices.push_back({QStringLiteral("hands/left/%1").arg(int(left)),
                                 left ? tr("At the left") : tr("At the right"),
                                 {},
                                 [this, left] {
                                     LookWishes wished = m_now.look;
                                     wished.actionsLeft = left;
                                     wish(wished);
                                 },
                                 false,
                                 m_now.look.actionsLeft == left});
    }
    sheet.add(sides);
    Sheet::Choices letters;
    letters.label = tr("Letters on the glass");
    for (const bool on : {false, true}) {
        letters.choices.push_back({QStringLiteral("hands/letters/%1").arg(int(on)),
                                   on ? tr("Whenever I type") : tr("A keyboard is here"),
                                   {},
                                   [this, on] {
                                       LookWishes wished = m_now.look;
                                       wished.letters = on;
                                       wish(wished);
                                   },
                                   false,
                                   m_now.look.letters == on});
    }
    sheet.add(letters);
    sheet.head(tr("Pedal or one key"));
    sheet.say(tr("Pressed short: hands on it. Held for a second: done, on the large block alone. Each answers with a "
                 "sound of its own."));
    sheet.add(Sheet::Row{QStringLiteral("hands/pedal/now"),
                         tr("The key now"),
                         {},
                         m_now.pedalKey.isEmpty() ? tr("none") : m_now.pedalKey});
    Sheet::Choices acts;
    acts.choices = {{QStringLiteral("hands/pedal/choose"),
                     m_capturing ? tr("Press the pedal now") : tr("Choose another key"),
                     m_capturing ? tr("Esc leaves it as it is") : QString(),
                     [this] {
                         m_capturing = !m_capturing;
                         page().setFocus(Qt::OtherFocusReason);
                         refresh();
                     },
                     true, m_capturing}};
    if (!m_now.pedalKey.isEmpty()) {
        acts.choices.push_back(
            {QStringLiteral("hands/pedal/none"), tr("No pedal"), {}, [this] { Q_EMIT pedalKeyChosen(0); }});
    }
    sheet.add(acts);
    return sheet;
}

} // namespace mend::app
