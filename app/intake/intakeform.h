#pragma once

#include "app/intake/intakespace.h"

namespace mend::app {

/// Says the page of the intake as a sheet, part by part from top to bottom.
class IntakeForm {
public:
    explicit IntakeForm(IntakeSpace& space);
    parts::Sheet take();

private:
    void addOwner();
    void offerKnown();
    static QString contactHint(const record::Customer& person);
    void offerHers();
    void addPiece();
    void askBenchName();
    void askFragments();
    void addAccessories();
    void addMending();
    void addPromise();
    void addMoney();
    void askOptions();
    void addMore();
    void addOldMends();
    void addMeasures();
    void addConsent();
    void addSigning();

    /// A line of words that goes straight onto the page.
    parts::Sheet::Field words(const char* key, const QString& label, std::string& to, bool pair = false);
    parts::Sheet::Field money(const char* key, const QString& label, std::optional<Money>& to, bool pair = false);
    parts::Sheet::Field measure(const char* key, const QString& label, const QString& unit, double shown,
                                std::function<void(std::optional<double>)> told, bool pair = false);
    parts::Sheet::Field length(const char* key, const QString& label, std::optional<Length>& to, bool pair = false);
    parts::Sheet::Field run(const char* key, const QString& label, Length& to, bool pair = false);
    QString fault(const char* key) const;
    /// The line as it was typed, be it good or not; else what is kept.
    QString typedOr(const QString& key, const QString& kept) const;
    std::function<void()> changing(std::function<void(record::Intake&)> change);

    IntakeSpace& m_space;
    record::Intake& m_page;
    std::vector<record::IntakeFault> m_faults; ///< shown ones
    parts::Sheet m_sheet;
};

} // namespace mend::app
