#pragma once

// What each record is made of, by name; see form.h for what walks along these.

#include "core/record/form.h"
#include "core/record/intake.h"
#include "core/record/photo.h"
#include "core/record/piece.h"
#include "core/record/visit.h"

namespace mend::record {

inline constexpr std::array<FormWord<ContactKind>, 4> contactKinds{{{ContactKind::Phone, "phone"},
                                                                    {ContactKind::Mail, "mail"},
                                                                    {ContactKind::Post, "post"},
                                                                    {ContactKind::Other, "other"}}};
inline constexpr std::array<FormWord<Body>, 3> bodies{
    {{Body::Unknown, "unknown"}, {Body::Porous, "porous"}, {Body::Vitrified, "vitrified"}}};
inline constexpr std::array<FormWord<Signature>, 3> signatures{
    {{Signature::None, "none"}, {Signature::Drawn, "drawn"}, {Signature::OnPaper, "onPaper"}}};
inline constexpr std::array<FormWord<CameFor>, 5> cameForWords{{{CameFor::FirstTime, "firstTime"},
                                                                {CameFor::JoinFailed, "joinFailed"},
                                                                {CameFor::BrokenAnew, "brokenAnew"},
                                                                {CameFor::FragmentFound, "fragmentFound"},
                                                                {CameFor::Another, "another"}}};
inline constexpr std::array<FormWord<MarkKind>, 5> markKinds{{{MarkKind::Chip, "chip"},
                                                              {MarkKind::Crack, "crack"},
                                                              {MarkKind::Loss, "loss"},
                                                              {MarkKind::OldMend, "oldMend"},
                                                              {MarkKind::Stain, "stain"}}};

/// Those parts of a record that stand beside its own columns in the file.
template <class T> struct RestOf {
    T record;
};
template <class Form, class T> void fields(Form& form, RestOf<T>& rest) { restOf(form, rest.record); }

template <class Form> void fields(Form& form, ContactWay& way)
{
    form.choice("kind", way.kind, contactKinds, ContactKind::Other);
    form.text("text", way.text);
}

/// What stands beside a customer's name and contact.
template <class Form> void restOf(Form& form, Customer& customer)
{
    form.list("more", customer.more);
    form.text("note", customer.note);
    form.day("keptOn", customer.keptOn);
}

template <class Form> void fields(Form& form, Customer& customer)
{
    form.id("id", customer.id);
    form.text("name", customer.name);
    form.text("contact", customer.contact);
    restOf(form, customer);
}

template <class Form> void fields(Form& form, Size& size)
{
    form.amount("heightUm", size.height);
    form.amount("widthUm", size.width);
    form.amount("depthUm", size.depth);
    form.amount("wallUm", size.wall);
    form.amount("massMg", size.mass);
}

/// What stands beside the agreed work on a piece.
template <class Form> void restOf(Form& form, Piece& piece)
{
    form.text("looks", piece.looks);
    form.text("maker", piece.maker);
    form.text("marks", piece.marks);
    form.part("size", piece.size);
}

template <class Form> void fields(Form& form, Piece& piece)
{
    form.id("id", piece.id);
    form.text("number", piece.number);
    form.text("benchName", piece.benchName);
    form.id("owner", piece.owner);
    form.text("procedure", piece.procedure);
    form.choice("body", piece.body, bodies, Body::Unknown);
    form.number("fragments", piece.fragments, 1);
    form.number("joins", piece.joins, 0);
    form.number("sets", piece.sets, 0);
    form.amount("seamUm", piece.seam);
    form.amount("chipUm", piece.chip);
    form.texts("optionalStages", piece.optionalStages);
    form.texts("materialsInIt", piece.materialsInIt);
    restOf(form, piece);
}

template <class Form> void fields(Form& form, Condition& condition)
{
    form.text("seen", condition.seen);
    form.text("inferred", condition.inferred);
    form.text("how", condition.how);
    form.texts("oldMends", condition.oldMends);
}

template <class Form> void fields(Form& form, Accessory& accessory)
{
    form.text("what", accessory.what);
    form.number("count", accessory.count, 1);
}

template <class Form> void fields(Form& form, Consent& consent)
{
    form.text("scope", consent.scope);
    form.flag("reversible", consent.reversible, true);
    form.flag("visible", consent.visible, true);
    form.flag("metal", consent.metal, false);
    form.flag("noFoodUse", consent.noFoodUse, true);
    form.flag("hiddenDamage", consent.hiddenDamage, true);
    form.flag("photoUse", consent.photoUse, false);
    form.money("priceFrom", consent.priceFrom);
    form.money("priceTo", consent.priceTo);
    form.text("words", consent.words);
    form.day("signedOn", consent.signedOn);
    form.choice("how", consent.how, signatures, Signature::None);
    form.text("picture", consent.picture);
}

/// What a visit holds beside its piece and number.
template <class Form> void restOf(Form& form, Visit& visit)
{
    form.choice("cameFor", visit.cameFor, cameForWords, CameFor::FirstTime);
    form.text("procedure", visit.procedure);
    form.number("fragments", visit.fragments, 0);
    form.part("condition", visit.condition);
    form.list("accessories", visit.accessories);
    form.money("declaredValue", visit.declaredValue);
    form.text("wishes", visit.wishes);
    form.text("story", visit.story);
    form.part("consent", visit.consent);
}

template <class Form> void fields(Form& form, Visit& visit)
{
    form.id("piece", visit.piece);
    form.number("number", visit.number, 1);
    restOf(form, visit);
}

template <class Form> void fields(Form& form, Intake& intake)
{
    form.part("owner", intake.owner);
    form.part("piece", intake.piece);
    form.part("visit", intake.visit);
    form.day("promised", intake.promised);
    form.money("deposit", intake.deposit);
    form.flag("agreed", intake.agreed, false);
    form.flag("alikeNamesAccepted", intake.alikeNamesAccepted, false);
    form.flag("samePersonAnswered", intake.samePersonAnswered, false);
}

template <class Form> void fields(Form& form, PhotoMark& mark)
{
    form.choice("kind", mark.kind, markKinds, MarkKind::Chip);
    form.number("x", mark.x, 0);
    form.number("y", mark.y, 0);
    form.text("note", mark.note);
}

template <class Form> void fields(Form& form, PhotoNote& note)
{
    form.number("visit", note.visit, 1);
    form.instant("taken", note.taken);
    form.text("words", note.words);
    form.list("marks", note.marks);
}

template <class Form> void fields(Form& form, Person& person)
{
    form.id("id", person.id);
    form.text("name", person.name);
}

} // namespace mend::record
