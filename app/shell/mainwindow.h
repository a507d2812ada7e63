#pragma once

#include "app/bench/benchspace.h"
#include "app/parts/letterpad.h"
#include "app/shell/shellscenes.h"

#include <QStackedWidget>
#include <QWidget>
#include <vector>

namespace mend::app {

/// How this person wants the window to look; the rest follows from the screen.
struct LookSettings {
    parts::Theme theme = parts::Theme::Light;
    double scale = 1.0; ///< 1.5: everything half as large again
    bool reduceMotion = false;
    bool actionsLeft = false;
    std::optional<double> dpi; ///< measured with a card; empty: what the screen says
    bool letters = false;      ///< letters on the glass whenever a line is typed into
};

/// The one window: a rail of words, the spaces behind it, banners above and, in every space but
/// the Bench, the most urgent thing on the bench below.
class MainWindow : public QWidget, private Hands {
    Q_OBJECT

public:
    explicit MainWindow(parts::TapGate& gate, QWidget* parent = nullptr);
    ~MainWindow() override;

    BenchSpace& bench() { return *m_bench; }
    /// A further space, which has content; the Bench is there from the start. Without a word it is none of the
    /// rail's: something else leads there.
    void addSpace(const QString& key, const QString& word, QWidget* space);
    void showSpace(const QString& key);
    QString spaceShown() const { return m_here; }

    void setLookSettings(const LookSettings& settings);
    const parts::Look& look() const { return m_look; }
    /// Lines that stay until what they say is over. What hangs over the bench is added by itself.
    void setBanners(std::vector<Banner> banners);
    void setBoard(const bench::Board& board, const Extras& extras);
    void setNow(Instant now);
    /// True where the window shows seconds now.
    bool showsSeconds() const { return m_bench->showsSeconds(); }

    parts::ActView& rail() { return *m_rail; }
    parts::ActView& urgent() { return *m_urgent; }
    parts::ActView& banners() { return *m_bannerView; }
    /// Letters on the glass; seen only while a line is typed into and where they are wished.
    parts::LetterPad& letters() { return *m_letters; }

Q_SIGNALS:
    void spaceChanged(const QString& key);
    void bannerActed(const QString& key);
    /// The look has changed: spaces that draw themselves take it from `look()`.
    void lookChanged();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void showEvent(QShowEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void act(PieceId piece, const bench::CardAct& act) override;
    void more(PieceId) override {}
    void why(PieceId) override {}
    void undo(EventId) override {}
    void openPlace(PlaceId) override {}
    void mixNow(const QString&) override {}
    void openMix(MixId) override {}
    void openPeople() override {}
    void openSound() override {}
    void allMixes() override {}
    void allPlaces() override {}
    void step(int) override {}

    parts::Measure measureHere() const;
    void applyLook();
    void arrange();
    void compose();
    void composeUrgent();
    void gatherBanners();
    static QString putOffWords(const Picture& picture);
    int bannersAcross(int wide) const;
    void focusMovedTo(QWidget* widget);
    void banner(const QString& key);
    void go(const QString& key);
    /// The words of the rail: of the spaces that have one.
    std::vector<RailWord> railWords() const;

    parts::TapGate& m_gate;
    LookSettings m_settings;
    parts::Look m_look;
    BenchPlan m_plan;
    std::vector<RailWord> m_words;
    std::vector<Banner> m_told;    ///< set from outside
    std::vector<Banner> m_banners; ///< as shown
    QString m_here;
    bool m_railOpen = false;
    bool m_blockCovered = false;
    parts::ActView* m_rail;
    parts::ActView* m_bannerView;
    QStackedWidget* m_stack;
    BenchSpace* m_bench;
    parts::ActView* m_urgent;
    parts::LetterPad* m_letters;
};

} // namespace mend::app
