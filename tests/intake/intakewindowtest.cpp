// The intake in the real window on a real file: real keys, real clicks.
#include "tests/find/doorhouse.h"

#include <gtest/gtest.h>

#include <filesystem>

namespace mend::app {
namespace {

using record::Signature;

struct TakingIn : testing::Test {
    TakingIn() { house.window->showSpace(QStringLiteral("intake")); }
    IntakeSpace& space() { return house.link->intake(); }
    parts::SheetView& form() { return space().form(); }
    parts::SheetView& slip() { return space().slip(); }
    bool has(const char* key) { return form().hit(QString::fromLatin1(key)); }

    /// A tap with a finger, counted.
    void tap(parts::SheetView& sheet, const char* key)
    {
        ++taps;
        EXPECT_TRUE(click(sheet, QString::fromLatin1(key))) << key;
    }
    /// A tap into a line, counted, and what is typed there.
    void fill(const char* key, const char* words)
    {
        QLineEdit* const line = form().field(QString::fromLatin1(key));
        ASSERT_TRUE(line) << key;
        if (house.window->focusWidget() != line) {
            ++taps;
            form().scrollTo(form().offset() + line->geometry().center().y() - form().height() / 2);
            QTest::mouseClick(line, Qt::LeftButton);
        }
        EXPECT_EQ(house.window->focusWidget(), line) << key;
        QTest::keyClicks(line, QString::fromUtf8(words));
    }
    void sign()
    {
        ++taps;
        parts::SignaturePad& pad = space().pad();
        form().scrollTo(form().offset() + pad.geometry().center().y() - form().height() / 2);
        const QPoint middle = pad.rect().center();
        QTest::mousePress(&pad, Qt::LeftButton, {}, middle - QPoint(60, 10));
        for (int step = 0; step < 8; ++step) {
            QTest::mouseMove(&pad, middle + QPoint(step * 12 - 50, step % 2 * 16 - 8));
        }
        QTest::mouseRelease(&pad, Qt::LeftButton, {}, middle + QPoint(60, 10));
    }
    void fillTypicalPage()
    {
        fill("owner/name", "Ines Varga");
        fill("owner/contact", "020 7946 0142");
        fill("piece/benchName", "Heron bowl");
        fill("piece/looks", "small blue bowl with a heron");
        tap(form(), "intake/fragments/6");
        tap(form(), "intake/with/lid");
        tap(form(), "intake/procedure/goldLacquerSeam");
        tap(form(), "intake/promise/6");
        fill("deposit", "40");
    }
    /// Agrees the first step of the typical procedure that need not be done; gives its key.
    std::string agreeOption()
    {
        const rules::Procedure* const procedure = house.bench->book().procedure("goldLacquerSeam");
        const auto option = std::ranges::find(procedure->stages, true, &rules::Stage::optional);
        EXPECT_NE(option, procedure->stages.end());
        if (option == procedure->stages.end()) {
            return {};
        }
        tap(form(), ("intake/option/" + option->key).c_str());
        return option->key;
    }
    std::optional<service::PieceFile> fileOf(PieceId piece)
    {
        std::optional<service::PieceFile> held;
        bool answered = false;
        house.door->openPiece(piece, [&](const Result<service::PieceFile>& file) {
            answered = true;
            if (file) {
                held = file.value();
            }
        });
        house.waitFor([&] { return answered; });
        return held;
    }
    bool taken()
    {
        return house.waitFor([&] { return says(slip(), QStringLiteral("is taken in as")); });
    }

    DoorHouse house;
    int taps = 0;
};

TEST_F(TakingIn, ATypicalPieceNeedsTwelveTapsAtMostAndEverythingIsKept)
{
    fillTypicalPage();
    sign();
    tap(slip(), "intake/takein");
    ASSERT_TRUE(taken());
    EXPECT_LE(taps, 12);
    ASSERT_EQ(house.bench->bench().pieces.size(), 1U);
    const auto& [id, state] = *house.bench->bench().pieces.begin();
    EXPECT_TRUE(state.agreed) << "on the bench at once";
    ASSERT_TRUE(house.waitFor([&, piece = id] {
        const auto file = fileOf(piece);
        return file && file->visit() && !file->visit()->consent.picture.empty();
    })) << "what was drawn stands with the consent";
    const auto file = fileOf(id);
    ASSERT_TRUE(file);
    EXPECT_EQ(file->owner.name, "Ines Varga");
    EXPECT_EQ(file->owner.contact, "020 7946 0142");
    EXPECT_EQ(file->piece.looks, "small blue bowl with a heron");
    EXPECT_EQ(file->piece.fragments, 6);
    EXPECT_EQ(file->piece.procedure, "goldLacquerSeam");
    EXPECT_EQ(file->dossier.now().fragments.in, 6);
    EXPECT_EQ(file->dossier.now().accessories.in, 1);
    EXPECT_EQ(dayText(file->dossier.now().promise()->day), "2027-04-12") << "six weeks from 1 March 2027";
    ASSERT_EQ(file->dossier.now().payments.size(), 1U);
    EXPECT_EQ(file->dossier.now().payments.front().money.minorUnits(), 4000);
    EXPECT_EQ(file->visit()->consent.how, Signature::Drawn);
    EXPECT_TRUE(space().intake().owner.name.empty()) << "the next page is empty";
    EXPECT_TRUE(says(slip(), service::numberWords(file->piece.number)));
    ASSERT_TRUE(click(slip(), QStringLiteral("intake/open")));
    EXPECT_EQ(house.wanted, id);
}

TEST_F(TakingIn, WhatIsMissingIsSaidAndNothingIsKept)
{
    tap(slip(), "intake/takein");
    for (const char* words :
         {"Give it a name", "Count the fragments", "Choose how it is mended", "Let the owner sign"}) {
        EXPECT_TRUE(says(slip(), QString::fromLatin1(words))) << words;
    }
    EXPECT_TRUE(house.bench->bench().pieces.empty());
    fillTypicalPage();
    EXPECT_FALSE(says(slip(), QStringLiteral("Give it a name")));
    EXPECT_TRUE(says(slip(), QStringLiteral("Let the owner sign")));
    tap(slip(), "intake/receive");
    ASSERT_TRUE(taken());
    EXPECT_FALSE(house.bench->bench().pieces.begin()->second.agreed) << "received only";
}

TEST_F(TakingIn, AReturningCustomerIsFoundByAMisspeltNameAndNeverMergedUnasked)
{
    const PieceId first = house.takeIn(DoorHouse::pageOf("Reed dish", "Ines Varga", "020 7946 0142"));
    house.window->showSpace(QStringLiteral("intake"));
    fill("owner/name", "Ines Vagra");
    fill("owner/contact", "020 7946 0142");
    ASSERT_TRUE(house.waitFor([&] { return has("intake/owner/new"); }));
    const CustomerId known = house.bench->bench().roster.piece(first)->owner;
    EXPECT_FALSE(says(form(), QStringLiteral("7946 0142"))) << "nobody else's phone is read here";
    tap(slip(), "intake/takein");
    EXPECT_TRUE(says(slip(), QStringLiteral("whether it is the same person")));
    tap(form(), qPrintable(QStringLiteral("intake/owner/%1").arg(known.value())));
    EXPECT_EQ(space().intake().owner.id, known);
    EXPECT_EQ(form().field(QStringLiteral("owner/name"))->text(), QStringLiteral("Ines Varga"));
    EXPECT_FALSE(says(slip(), QStringLiteral("whether it is the same person")));
    type(form(), QStringLiteral("owner/name"), QStringLiteral("Ines Vargas"));
    EXPECT_FALSE(space().intake().owner.id.isSet()) << "another name is another person";
}

TEST_F(TakingIn, AnotherPersonOfThatNameStaysAnother)
{
    const PieceId first = house.takeIn(DoorHouse::pageOf("Reed dish", "Ines Varga", "020 7946 0142"));
    house.window->showSpace(QStringLiteral("intake"));
    fill("owner/name", "Ines Varga");
    ASSERT_TRUE(house.waitFor([&] { return has("intake/owner/new"); }));
    tap(form(), "intake/owner/new");
    fill("owner/contact", "020 7946 0199");
    fill("piece/benchName", "Milk jug");
    tap(form(), "intake/fragments/3");
    tap(slip(), "intake/receive");
    ASSERT_TRUE(taken());
    const bench::Roster& roster = house.bench->bench().roster;
    ASSERT_EQ(roster.pieces.size(), 2U);
    EXPECT_NE(roster.pieces[0].owner, roster.pieces[1].owner);
    EXPECT_TRUE(roster.piece(first));
}

TEST_F(TakingIn, AlikeNamesAskForAWordMoreOrAreKept)
{
    house.takeIn(DoorHouse::pageOf("Heron bowl", "Odile Marsh", "020 7946 0187"));
    house.window->showSpace(QStringLiteral("intake"));
    fill("piece/benchName", "Herons bowl");
    EXPECT_TRUE(says(form(), QStringLiteral("sounds like")));
    tap(form(), "intake/alike");
    EXPECT_TRUE(space().intake().alikeNamesAccepted);
    EXPECT_FALSE(has("intake/alike"));
}

TEST_F(TakingIn, APromiseThatCannotBeKeptIsSaidAtTheMoment)
{
    tap(form(), "intake/procedure/urushiSeam");
    tap(form(), "intake/promise/2");
    EXPECT_TRUE(says(form(), QStringLiteral("too early")));
    type(form(), QStringLiteral("promised"), QStringLiteral("2028-12-24"));
    EXPECT_EQ(space().intake().promised, dayFrom("2028-12-24"));
    EXPECT_FALSE(says(form(), QStringLiteral("too early")));
    type(form(), QStringLiteral("promised"), QStringLiteral("2027-02-30"));
    EXPECT_FALSE(space().intake().promised);
    EXPECT_TRUE(says(form(), QStringLiteral("no day of the calendar")) ||
                !form().field(QStringLiteral("promised"))->accessibleDescription().isEmpty());
}

TEST_F(TakingIn, ABadAmountIsSaidAndNothingIsGuessedF49)
{
    for (const char* words : {"12,345,678", "ten", "1e9", "99999999999999999999", "12.345"}) {
        type(form(), QStringLiteral("deposit"), QString::fromLatin1(words));
        EXPECT_FALSE(space().intake().deposit) << words;
        EXPECT_TRUE(says(form(), QStringLiteral("An amount such as"))) << words;
    }
    type(form(), QStringLiteral("deposit"), QStringLiteral("120,50"));
    EXPECT_EQ(space().intake().deposit->minorUnits(), 12050);
}

TEST_F(TakingIn, WhatWasMeasuredAndWhatHoldsItFromBeforeIsKept)
{
    fillTypicalPage();
    tap(form(), "intake/more");
    const std::string option = agreeOption();
    tap(form(), "intake/old/oldMend");
    tap(form(), "intake/old/plaster");
    tap(form(), "intake/old/plaster"); // it was not
    fill("visit/condition/oldMends", "brown glue at the foot; ; three rivets");
    fill("piece/size/height", "82.5");
    fill("piece/size/wall", "4");
    fill("piece/size/mass", "310");
    fill("piece/seam", "64");
    sign();
    tap(slip(), "intake/takein");
    ASSERT_TRUE(taken());
    const PieceId id = house.bench->bench().pieces.begin()->first;
    const auto file = fileOf(id);
    ASSERT_TRUE(file);
    EXPECT_EQ(file->piece.size.height, millimetres(82.5));
    EXPECT_EQ(file->piece.size.wall, millimetres(4));
    EXPECT_FALSE(file->piece.size.width);
    EXPECT_EQ(file->piece.size.mass, grams(310));
    EXPECT_EQ(file->piece.seam, centimetres(64));
    EXPECT_EQ(file->piece.materialsInIt, std::vector<std::string>{"oldMend"});
    EXPECT_EQ(file->piece.optionalStages, std::vector<std::string>{option});
    EXPECT_EQ(file->visit()->condition.oldMends, (std::vector<std::string>{"brown glue at the foot", "three rivets"}));
    EXPECT_TRUE(house.bench->bench().piece(id)->chosenOptions.contains(option)) << "the bench does it";
}

TEST_F(TakingIn, MeasuresAreReadAsTheLanguageWritesThemF31)
{
    service::Manner manner;
    manner.locale = QLocale(QLocale::German);
    house.link->setManner(manner);
    tap(form(), "intake/more");
    fill("piece/size/height", "82,5");
    EXPECT_EQ(space().intake().piece.size.height, millimetres(82.5));
    fill("piece/size/width", "1.000,5");
    EXPECT_FALSE(space().intake().piece.size.width) << "a group mark means another number elsewhere";
    EXPECT_TRUE(says(form(), QStringLiteral("A number above nothing, such as 82 or 82,5.")));
    manner.inches = true;
    manner.locale = QLocale(QLocale::English);
    house.link->setManner(manner);
    fill("piece/size/depth", "3.25");
    EXPECT_EQ(space().intake().piece.size.depth, millimetres(82.55)) << "25.4 mm an inch";
    fill("piece/size/wall", "-2");
    EXPECT_FALSE(space().intake().piece.size.wall);
}

TEST_F(TakingIn, AnotherProcedureDropsTheStepsOfTheOneBefore)
{
    fillTypicalPage();
    tap(form(), "intake/more");
    agreeOption();
    EXPECT_EQ(space().intake().piece.optionalStages.size(), 1U);
    tap(form(), "intake/procedure/invisibleMend");
    EXPECT_TRUE(space().intake().piece.optionalStages.empty());
}

TEST_F(TakingIn, AHalfFilledPageOutlivesAKill)
{
    fill("owner/name", "Ines Varga");
    fill("piece/benchName", "Heron bowl");
    tap(form(), "intake/fragments/6");
    QTest::qWait(IntakeLink::draftAfterMs + 100);
    ASSERT_TRUE(house.thread->waitUntilStored(std::chrono::seconds(5)));
    // What lies on the disk now is what a kill would leave.
    const test::Scratch killed;
    for (const auto& entry : std::filesystem::directory_iterator(house.scratch.folder())) {
        if (entry.is_regular_file() && entry.path().filename().native().starts_with("bench.mend")) {
            std::filesystem::copy(entry.path(), killed / entry.path().filename().native());
        }
    }
    store::OpenOptions options;
    options.mode = store::OpenMode::ReadOnly;
    const auto store = store::Store::open(killed / "bench.mend", options);
    ASSERT_TRUE(store.isOk());
    const auto drafts = store.value()->drafts();
    ASSERT_TRUE(drafts.isOk());
    ASSERT_EQ(drafts.value().size(), 1U);
    EXPECT_NE(drafts.value().front().sheet.find("Heron bowl"), std::string::npos);
}

TEST_F(TakingIn, OneTapEmptiesNoPage)
{
    fill("owner/name", "Ines Varga");
    tap(slip(), "intake/empty");
    EXPECT_EQ(space().intake().owner.name, "Ines Varga");
    tap(slip(), "intake/keep");
    EXPECT_FALSE(slip().hit(QStringLiteral("intake/clear")));
    tap(slip(), "intake/empty");
    tap(slip(), "intake/clear");
    EXPECT_TRUE(space().intake().owner.name.empty());
}

TEST_F(TakingIn, TheNextStartGoesOnWithIt)
{
    record::Intake draft;
    draft.owner.name = "Ines Varga";
    draft.piece.benchName = "Heron bowl";
    draft.piece.fragments = 6;
    draft.visit.consent.how = Signature::Drawn;
    house.door->keepDraft(draft);
    IntakeSpace next(house.gate.gate);
    const IntakeLink link({*house.door, *house.bench}, next);
    ASSERT_TRUE(house.waitFor([&] { return next.intake().piece.fragments == 6; }));
    EXPECT_EQ(next.intake().owner.name, "Ines Varga");
    EXPECT_EQ(next.intake().visit.consent.how, Signature::None) << "strokes are not kept: it is signed again";
}

TEST_F(TakingIn, APieceThatComesBackKeepsItsNumber)
{
    const PieceId first = house.takeIn(DoorHouse::pageOf("Reed dish", "Ines Varga", "020 7946 0142"));
    const std::string number = house.numberOf(first);
    house.door->handOver(first, "Ines Varga", "onPaper");
    house.window->showSpace(QStringLiteral("intake"));
    fill("owner/name", "Varga");
    ASSERT_TRUE(house.waitFor([&] { return has("intake/owner/1"); }));
    tap(form(), "intake/owner/1");
    const std::string back = "intake/back/" + std::to_string(first.value());
    ASSERT_TRUE(house.waitFor([&] { return has(back.c_str()); }));
    tap(form(), back.c_str());
    tap(form(), "intake/why/anew");
    tap(form(), "intake/fragments/3");
    tap(form(), "intake/onpaper");
    tap(slip(), "intake/takein");
    ASSERT_TRUE(taken());
    EXPECT_TRUE(says(slip(), service::numberWords(number)));
    const auto file = fileOf(first);
    ASSERT_TRUE(file);
    EXPECT_EQ(file->dossier.visits.size(), 2U);
    EXPECT_EQ(file->dossier.now().cameFor, "brokenAnew");
}

TEST_F(TakingIn, LettersNeverCoverTheLineAndFiguresComeFirstForAnAmount)
{
    house.window->setLookSettings({parts::Theme::Light, 1.0, false, false, 96.0, true});
    house.window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(house.window.get()));
    for (const char* key : {"owner/name", "deposit", "visit/consent/priceTo"}) {
        QLineEdit* const line = form().field(QString::fromLatin1(key));
        line->setFocus();
        QCoreApplication::processEvents();
        ASSERT_TRUE(house.window->letters().isVisible()) << key;
        const QRect seen(line->mapTo(house.window.get(), QPoint()), line->size());
        EXPECT_TRUE(house.window->rect().contains(seen)) << key;
        EXPECT_FALSE(house.window->letters().geometry().intersects(seen)) << key;
    }
    EXPECT_TRUE(house.window->letters().hit(QStringLiteral("letter/1"))) << "an amount is typed in figures";
}

} // namespace
} // namespace mend::app
