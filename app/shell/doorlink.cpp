#include "app/shell/doorlink.h"

#include <QShortcut>

namespace mend::app {

namespace {
const QString& findKey()
{
    static const QString key = QStringLiteral("find");
    return key;
}

const QString& intakeKey()
{
    static const QString key = QStringLiteral("intake");
    return key;
}
} // namespace

DoorLink::DoorLink(Services services, MainWindow& window, parts::TapGate& gate, const service::Manner& manner,
                   QObject* parent)
    : QObject(parent), m_services(services), m_window(window), m_findSpace(new FindSpace(gate)),
      m_intakeSpace(new IntakeSpace(gate)), m_find(services, *m_findSpace),
      m_intake({services.door, services.bench}, *m_intakeSpace), m_ear(window)
{
    connectIntake();
    connectFind();
    setManner(manner);
}

void DoorLink::setManner(const service::Manner& manner)
{
    m_services.door.setZone(manner.zone);
    m_find.setManner(manner);
    m_intake.setManner(manner);
    show();
}

void DoorLink::openFind()
{
    m_window.showSpace(findKey());
    m_findSpace->begin();
}

void DoorLink::connectFind()
{
    m_window.addSpace(findKey(), tr("Find"), m_findSpace);
    const auto dress = [this] { m_findSpace->setLook(m_window.look()); };
    dress();
    connect(&m_window, &MainWindow::lookChanged, this, dress);
    connect(&m_window, &MainWindow::spaceChanged, this, [this](const QString& key) {
        show();
        if (key == findKey()) {
            m_findSpace->begin();
        }
    });
    connect(&m_services.bench, &service::BenchService::benchChanged, this, &DoorLink::show);
    connect(&m_services.door, &service::Door::changed, this, &DoorLink::show);
    connect(&m_find, &FindLink::findWanted, this, &DoorLink::openFind);
    connect(&m_find, &FindLink::pieceWanted, this, &DoorLink::openPiece);
    connect(&m_ear, &ScanEar::heard, &m_find, &FindLink::scanned);
    connect(m_findSpace, &FindSpace::hidingWanted, this, [this](bool hide) {
        Q_EMIT m_window.bench().told().ownersHidden(hide);
        show();
    });
    // The key that every desktop uses for looking something up, and one that no line to type into takes.
    QList<QKeySequence> keys = QKeySequence::keyBindings(QKeySequence::Find);
    keys.append(QKeySequence(Qt::Key_F3));
    for (const QKeySequence& each : keys) {
        connect(new QShortcut(each, &m_window), &QShortcut::activated, this, &DoorLink::openFind);
    }
}

void DoorLink::connectIntake()
{
    m_window.addSpace(intakeKey(), tr("Intake"), m_intakeSpace);
    const auto dress = [this] { m_intakeSpace->setLook(m_window.look()); };
    dress();
    connect(&m_window, &MainWindow::lookChanged, this, dress);
    connect(&m_window, &MainWindow::spaceChanged, this, [this](const QString& key) {
        if (key == intakeKey()) {
            m_intakeSpace->begin();
        }
    });
    connect(&m_window.bench(), &BenchSpace::addPieceWanted, this, [this] { m_window.showSpace(intakeKey()); });
    connect(m_intakeSpace, &IntakeSpace::benchWanted, this, [this] { m_window.showSpace(QStringLiteral("bench")); });
    connect(m_intakeSpace, &IntakeSpace::pieceWanted, this, &DoorLink::openPiece);
}

void DoorLink::show()
{
    if (m_window.spaceShown() == intakeKey()) {
        m_intake.show();
    }
    if (m_window.spaceShown() == findKey()) {
        m_findSpace->setOwnersHidden(m_window.bench().picture().hideOwners);
        m_find.show();
    }
}

} // namespace mend::app
