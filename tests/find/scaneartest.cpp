#include "app/shell/scanear.h"

#include <gtest/gtest.h>

#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <QVBoxLayout>

namespace mend::app {
namespace {

struct Ear : testing::Test {
    Ear()
    {
        auto* rows = new QVBoxLayout(&window);
        line = new QLineEdit;
        button = new QPushButton;
        rows->addWidget(line);
        rows->addWidget(button);
        window.show();
        line->setFocus();
        QObject::connect(&ear, &ScanEar::heard, &ear, [this](const QString& number) { heard << number; });
        QObject::connect(line, &QLineEdit::textEdited, &ear, [this](const QString& text) { edited = text; });
        QObject::connect(line, &QLineEdit::returnPressed, &ear, [this] { ++returns; });
    }
    /// Keys with that many milliseconds between them, then Return.
    void keys(QWidget* to, const QString& words, qint64 pause)
    {
        for (const QChar letter : words) {
            now += pause;
            QTest::keyClick(to, letter.toLatin1());
        }
        now += pause;
        QTest::keyClick(to, Qt::Key_Return);
    }
    QWidget window;
    QLineEdit* line = nullptr;
    QPushButton* button = nullptr;
    qint64 now = 1000;
    ScanEar ear{window, [this] { return now; }};
    QStringList heard;
    QString edited;
    int returns = 0;
};

TEST_F(Ear, HearsAScannerAndLeavesTheLineAsItWas)
{
    QTest::keyClicks(line, QStringLiteral("Ines"));
    now += 1000;
    keys(line, QStringLiteral("260417-5"), 4);
    EXPECT_EQ(heard, QStringList{QStringLiteral("260417-5")});
    EXPECT_EQ(line->text(), QStringLiteral("Ines"));
    EXPECT_EQ(edited, QStringLiteral("Ines"));
    EXPECT_EQ(returns, 0);
}

TEST_F(Ear, APersonWhoTypesIsNoScanner)
{
    keys(line, QStringLiteral("2604175"), ScanEar::longestPause + 1);
    EXPECT_TRUE(heard.isEmpty());
    EXPECT_EQ(line->text(), QStringLiteral("2604175"));
    EXPECT_EQ(returns, 1);
}

TEST_F(Ear, NeitherLettersNorShortNorLongFiguresAreANumber)
{
    for (const char* words : {"26041", "26041755555", "26041a5", "heronbowl"}) {
        now += 1000;
        keys(line, QString::fromLatin1(words), 4);
        EXPECT_TRUE(heard.isEmpty()) << words;
    }
}

TEST_F(Ear, ItsReturnPressesNoButton)
{
    int pressed = 0;
    QObject::connect(button, &QPushButton::clicked, &ear, [to = &pressed] { ++*to; });
    button->setAutoDefault(true);
    button->setFocus();
    keys(button, QStringLiteral("2604175"), 4);
    EXPECT_EQ(heard.size(), 1);
    EXPECT_EQ(pressed, 0);
}

} // namespace
} // namespace mend::app
