#pragma once

#include <QString>
#include <QStringList>
#include <optional>

namespace mend::app {

/// How the program was started.
struct ProgramOptions {
    QString file;              ///< bench file to open; empty: the user's own, or the demo
    bool demo = false;         ///< the invented studio
    bool fresh = false;        ///< made anew
    QString picture;           ///< write a picture of the Bench there and end
    bool print = false;        ///< print cards and alerts as text and end
    QString theme;             ///< "light", "dark", "contrast"; empty: as set
    double scale = 0;          ///< 0: as set
    QString size;              ///< "1280x800"; empty: as the screen allows
    QString language;          ///< a code, or a .qm file that is tried out; empty: as set
    bool sayActs = false;      ///< tell on standard output what can be tapped where (see SayActs)
    QString because;           ///< why an open window may be left for another file
    QString said;              ///< stands as a notice once the bench is open
    bool atLanguage = false;   ///< Settings stand open at the language, which was just chosen there
    bool takeOver = false;     ///< a person said that the machine which held the file is gone
    bool measureStart = false; ///< end once the Bench is painted and say how long it took

    /// Whether a person is to work with it, and so whether there may be one only.
    bool hasWindow() const { return picture.isEmpty() && !print; }
};

/// What to do instead of starting: print this and end with that code.
struct EarlyEnd {
    QString words;
    int code = 0;
};

/// Reads the command line without a display, so that `--help` and mistakes never need one.
struct ReadOptions {
    ProgramOptions options;
    std::optional<EarlyEnd> end;
};
ReadOptions readOptions(const QStringList& arguments);

} // namespace mend::app
