#include "core/exchange/people.h"

#include <gtest/gtest.h>

#include <sstream>

using namespace mend;
using namespace mend::exchange;
using record::ContactKind;
using record::ContactWay;

namespace {

PeopleList cards(const std::string& text)
{
    std::istringstream in(text);
    return readVcards(in);
}

PeopleList table(const std::string& text)
{
    std::istringstream in(text);
    return readPeopleTable(in);
}

} // namespace

// RFC 6350: FN, TEL as a URI, structured ADR, escapes, folding.
TEST(Vcard, ReadsTheFourthVersion)
{
    const PeopleList list = cards("BEGIN:VCARD\r\nVERSION:4.0\r\nFN:Ana\r\n  Müller\r\n"
                                  "TEL;VALUE=uri;TYPE=\"voice,cell\":tel:+44-20-7946-0618\r\n"
                                  "item1.EMAIL:ana@example.org\r\nADR:;;3 Lark Lane;Upper Mere;;X1 2YZ;\r\n"
                                  "NOTE:likes gold\\, not silver\\nrings back\r\nBDAY:19600203\r\nEND:VCARD\r\n");
    ASSERT_EQ(list.people.size(), 1U);
    EXPECT_TRUE(list.faults.empty());
    const record::Customer& ana = list.people.front().person;
    EXPECT_EQ(ana.name, "Ana Müller") << "folded behind the blank that belongs to it";
    EXPECT_EQ(ana.contact, "+44-20-7946-0618");
    EXPECT_EQ(ana.more, (std::vector<ContactWay>{{ContactKind::Mail, "ana@example.org"},
                                                 {ContactKind::Post, "3 Lark Lane\nUpper Mere\nX1 2YZ"}}));
    EXPECT_EQ(ana.note, "likes gold, not silver\nrings back");
    EXPECT_EQ(list.people.front().line, 1);
}

// vCard 2.1: bare parameters, quoted-printable with soft line breaks, Latin-1.
TEST(Vcard, ReadsTheOlderVersionsAsTheyAreMetF37)
{
    const PeopleList list =
        cards("BEGIN:VCARD\nVERSION:2.1\nN;CHARSET=UTF-8;ENCODING=QUOTED-PRINTABLE:M=C3=BCller;A=\nna\n"
              "TEL;CELL;VOICE:07700 900461\nNOTE;ENCODING=QUOTED-PRINTABLE;CHARSET=ISO-8859-1:gr=FC=DFt\n"
              "END:VCARD\n"
              "BEGIN:VCARD\nVERSION:3.0\nFN:Jos\xe9\nTEL;TYPE=HOME:01632 960274\nEND:VCARD\n");
    ASSERT_EQ(list.people.size(), 2U);
    EXPECT_EQ(list.people[0].person.name, "Ana Müller");
    EXPECT_EQ(list.people[0].person.note, "grüßt");
    EXPECT_EQ(list.people[1].person.name, "José");
    EXPECT_EQ(list.people[1].notes, std::vector<std::string>{"FN: its letters were guessed"});
}

TEST(Vcard, OneBadCardLosesNoOtherF37)
{
    const PeopleList list = cards(
        "no card at all\nBEGIN:VCARD\nVERSION:4.0\nTEL:555-0142\nEND:VCARD\n"
        "BEGIN:VCARD\nFN:Outer\nAGENT:\nBEGIN:VCARD\nFN:Inner\nEND:VCARD\nTEL:555-0143\nthis line is none\nEND:VCARD\n"
        "BEGIN:VCARD\nFN:Last\nTEL:555-0144\n");
    ASSERT_EQ(list.people.size(), 2U);
    EXPECT_EQ(list.people[0].person.name, "Outer");
    EXPECT_EQ(list.people[0].person.contact, "555-0143");
    EXPECT_EQ(list.people[0].notes.size(), 2U) << "the inner card, the senseless line";
    EXPECT_EQ(list.people[1].person.name, "Last");
    EXPECT_EQ(list.faults, (std::vector<ListFault>{{2, "the card has no name"}, {15, "the card has no end"}}));
}

TEST(Vcard, StaysWithinBoundsF37)
{
    const PeopleList photo =
        cards("BEGIN:VCARD\nFN:Ana\nPHOTO;ENCODING=b:" + std::string(10'000'000, 'A') + "\nTEL:555-0142\nEND:VCARD\n");
    ASSERT_EQ(photo.people.size(), 1U);
    EXPECT_EQ(photo.people.front().person.contact, "555-0142");
    std::string folded = "BEGIN:VCARD\nFN:A";
    for (int i = 0; i < 1'200'000; ++i) {
        folded += "\n x";
    }
    const PeopleList endless = cards(folded + "\nTEL:555-0142\nEND:VCARD\n");
    ASSERT_EQ(endless.people.size(), 1U);
    EXPECT_LE(endless.people.front().person.name.size(), longestListField);
    EXPECT_FALSE(endless.faults.empty());
    std::string many;
    for (int i = 0; i < 10'020; ++i) {
        many += "BEGIN:VCARD\nFN:P" + std::to_string(i) + "\nEND:VCARD\n";
    }
    const PeopleList cut = cards(many);
    EXPECT_EQ(cut.people.size(), mostPeopleListed);
    EXPECT_EQ(cut.faults.back().text, "only the first 10,000 cards were read");
}

TEST(Vcard, TakesMarkupAndHiddenSignsAsTextF40F43F44)
{
    const PeopleList list = cards("BEGIN:VCARD\nFN:<b>Ana</b>\xe2\x80\xae\x07\nTEL:555\x01-0142\nEND:VCARD\n");
    ASSERT_EQ(list.people.size(), 1U);
    EXPECT_EQ(list.people.front().person.name, "<b>Ana</b>") << "shown as typed";
    EXPECT_EQ(list.people.front().person.contact, "555-0142");
    EXPECT_EQ(cards("BEGIN:VCARD\nN:Vane;A\x01\tnna\\nB;;;\nEND:VCARD\n").people.front().person.name, "AnnaB Vane");
}

TEST(PeopleTable, ReadsNamedColumnsInAnyOrder)
{
    const PeopleList list =
        table("E-Mail,Phone,NAME,Birthday,Note\r\nana@example.org,'+44 20 7946 0618,Ana Müller,1960,\"a\nb\"\r\n"
              ",,Nobody,,\r\n,555-0142,,,\r\n,555-0143,Jo,,\r\n");
    ASSERT_EQ(list.people.size(), 2U);
    EXPECT_EQ(list.people[0].person.name, "Ana Müller");
    EXPECT_EQ(list.people[0].person.contact, "ana@example.org");
    EXPECT_EQ(list.people[0].person.more, (std::vector<ContactWay>{{ContactKind::Phone, "+44 20 7946 0618"}}));
    EXPECT_EQ(list.people[0].person.note, "a\nb");
    EXPECT_EQ(list.faults, (std::vector<ListFault>{{3, "no way to reach them"}, {4, "nobody is named"}}));
}

TEST(PeopleTable, TakesNothingOfABrokenTableF35)
{
    const PeopleList broken = table("name,phone\nAna,555-0142\nJo,\"555\n");
    EXPECT_TRUE(broken.people.empty());
    EXPECT_EQ(broken.faults, (std::vector<ListFault>{{3, "a quote is never closed"}}));
    EXPECT_EQ(table("who,phone\nAna,555-0142\n").faults.front().text, "no column is called \"name\"");
    EXPECT_FALSE(table("").faults.empty());
}
