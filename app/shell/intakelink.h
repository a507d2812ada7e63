#pragma once

// Before the core, whose <compare> moc cannot read on its own.
#include <QObject>

#include "app/intake/intakespace.h"
#include "core/service/benchservice.h"
#include "core/service/door.h"

#include <QTimer>

namespace mend::app {

/// Ties the intake to the door: who is known, what stands against the page, keeping it, and its draft.
class IntakeLink : public QObject, private IntakeAnswers {
    Q_OBJECT

public:
    struct Services {
        service::Door& door;
        service::BenchService& bench;
    };
    IntakeLink(Services services, IntakeSpace& space, QObject* parent = nullptr);
    ~IntakeLink() override;

    void setManner(const service::Manner& manner) { m_manner = manner; }
    /// The procedures there are and the day it is now.
    void show();

    /// How long a page rests before its draft is kept: not every letter wakes the disk.
    static constexpr int draftAfterMs = 300;

private:
    std::vector<record::IntakeFault> faultsOf(const record::Intake& page,
                                              const std::vector<record::Customer>& known) const override;
    std::vector<std::string> alikeNames(const record::Intake& page) const override;
    QString promiseWords(const record::Intake& page) const override;

    void askPeople(const QString& name);
    void askPieces(CustomerId person);
    void takeIn(const record::Intake& page, const QImage& signature);
    void keepSignature(PieceId piece, const QImage& signature);
    void keepDraft();

    Services m_services;
    IntakeSpace& m_space;
    service::Manner m_manner;
    QTimer m_draft;
};

} // namespace mend::app
