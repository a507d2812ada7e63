#pragma once

#include "app/bench/panelpage.h"
#include "app/bench/told.h"
#include "app/parts/scrollview.h"

#include <QLineEdit>

namespace mend::app {

/// The panel over the cards: rarer acts, one step behind a card. It builds its pages from the
/// picture and says what was told; it closes itself when something was.
class Panel : public parts::ScrollView {
    Q_OBJECT

public:
    Panel(parts::TapGate& gate, const Picture& picture, Told& told, QWidget* parent = nullptr);

    static constexpr double barUnits = 10.0; ///< room for the bar that says how much there is

    void setDetails(const Details* details) { m_details = details; }
    bool isOpen() const { return m_page.has_value(); }
    const std::optional<PanelPage>& page() const { return m_page; }
    QLineEdit& words() { return *m_words; }

    void openMore(PieceId piece);
    void openWhy(PieceId piece);
    void openHazards(PieceId piece, const bench::StageInstance& stage);
    void openPlace(PlaceId place);
    void openPlaces();
    void openMix(MixId mix);
    void openMixKinds();
    void openPeople();
    /// What will not be cured by morning, before everybody goes home.
    void openClosing();
    void openSound();
    void openStanding();
    /// Everything that was put off on purpose, and a way to have it call at once.
    void openPutOff();
    /// Lists what closes meanwhile before hands begin something long.
    void askBegin(PieceId piece, const bench::CardAct& act, const QStringList& lines);
    void askWhichMix(PieceId piece, const bench::CardAct& act, const std::vector<MixId>& mixes,
                     std::optional<Instant> told);
    void close();
    /// The picture or the look changed.
    void refresh();

Q_SIGNALS:
    void opened();
    void closed();
    void glassWipeWanted();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    using Build = std::function<PanelPage()>;
    void open(Build build);
    void compose();
    /// Does it and goes back to the bench.
    std::function<void()> closing(std::function<void()> act);

    PanelPage morePage(PieceId piece);
    PanelPage timePage(PieceId piece);
    PanelPage agoPage(PieceId piece, const bench::CardAct& act);
    PanelPage placePage(PieceId piece);
    PanelPage notePage(PieceId piece);
    PanelPage reasonPage(PieceId piece, const QString& title, const QStringList& reasons,
                         const std::function<void(const QString&)>& tell);
    PanelPage sendBackPage(PieceId piece);
    PanelPage factsPage(PieceId piece);
    PanelPage factPage(PieceId piece, const Fact& fact);
    PanelPage moveFactPage(PieceId piece, const Fact& fact);
    PanelPage moveToPiecePage(PieceId piece, const Fact& fact);
    PanelPage keepMovePage(const Fact& fact, Instant happened, PieceId piece);
    PanelPage whyPage(PieceId piece);
    PanelPage hazardPage(PieceId piece, const bench::StageInstance& stage);
    PanelPage readingPage(PlaceId place);
    PanelPage mixPage(MixId mix);
    void addStates(PanelPage& page);
    QStringList nextForTheseHands() const;
    void typeReading(PlaceId place, QChar key);
    void readOn(PlaceId place);
    QString pieceName(PieceId piece) const;
    QString titleFor(PieceId piece, const QString& words) const;

    const Picture& m_picture;
    Told& m_told;
    const Details* m_details = nullptr;
    QLineEdit* m_words;
    Build m_build;
    std::optional<PanelPage> m_page;
    QString m_typed;
    std::optional<Temperature> m_temperature; ///< of a reading whose humidity is still to come
};

} // namespace mend::app
