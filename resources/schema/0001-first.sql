-- Version 1: what a bench file is made of. Never edited once released; a change is a new numbered file.
--
-- Rows that say what happened stand in `event`, are only ever added, and carry a hash chained to the row
-- before. Everything else may be put right; each such row carries a seal (a hash of itself), so that a
-- flipped bit is found though the row may change. Free words and names stay outside the chain, so that
-- forgetting a person does not break it.

CREATE TABLE meta (
    key TEXT PRIMARY KEY NOT NULL,
    value TEXT NOT NULL,
    seal BLOB NOT NULL CHECK (length(seal) = 16)
) STRICT, WITHOUT ROWID;

CREATE TABLE setting (
    key TEXT PRIMARY KEY NOT NULL CHECK (length(key) BETWEEN 1 AND 200),
    value TEXT NOT NULL,
    seal BLOB NOT NULL CHECK (length(seal) = 16)
) STRICT, WITHOUT ROWID;

CREATE TABLE customer (
    id INTEGER PRIMARY KEY NOT NULL,
    name TEXT NOT NULL,
    contact TEXT NOT NULL,
    seal BLOB NOT NULL CHECK (length(seal) = 16)
) STRICT;

CREATE TABLE place (
    id INTEGER PRIMARY KEY NOT NULL,
    name TEXT NOT NULL,
    kind TEXT NOT NULL,
    slots INTEGER NOT NULL CHECK (slots >= 0),
    seal BLOB NOT NULL CHECK (length(seal) = 16)
) STRICT;

CREATE TABLE person (
    id INTEGER PRIMARY KEY NOT NULL,
    name TEXT NOT NULL,
    seal BLOB NOT NULL CHECK (length(seal) = 16)
) STRICT;

CREATE TABLE piece (
    id INTEGER PRIMARY KEY NOT NULL,
    number TEXT NOT NULL UNIQUE CHECK (length(number) BETWEEN 1 AND 20),
    bench_name TEXT NOT NULL,
    owner INTEGER REFERENCES customer (id),
    procedure TEXT NOT NULL,
    body INTEGER NOT NULL,
    fragments INTEGER NOT NULL CHECK (fragments >= 0),
    joins INTEGER NOT NULL CHECK (joins >= 0),
    sets INTEGER NOT NULL CHECK (sets >= 0),
    seam_um INTEGER NOT NULL CHECK (seam_um >= 0),
    chip_um INTEGER NOT NULL CHECK (chip_um >= 0),
    optional_stages TEXT NOT NULL, -- keys, one a line
    materials TEXT NOT NULL,       -- keys, one a line
    seal BLOB NOT NULL CHECK (length(seal) = 16)
) STRICT;
CREATE INDEX piece_owner ON piece (owner);

CREATE TABLE rule_revision (
    hash TEXT PRIMARY KEY NOT NULL CHECK (length(hash) BETWEEN 1 AND 128),
    text TEXT NOT NULL,
    seal BLOB NOT NULL CHECK (length(seal) = 16)
) STRICT, WITHOUT ROWID;

CREATE TABLE event (
    id INTEGER PRIMARY KEY NOT NULL CHECK (id > 0),
    what INTEGER NOT NULL CHECK (what > 0),
    piece INTEGER REFERENCES piece (id),
    stage TEXT NOT NULL,
    repetition INTEGER NOT NULL,
    person INTEGER REFERENCES person (id),
    place INTEGER REFERENCES place (id),
    mix INTEGER,
    rules TEXT REFERENCES rule_revision (hash),
    happened TEXT NOT NULL CHECK (length(happened) = 24),
    recorded TEXT NOT NULL CHECK (length(recorded) = 24),
    boot_id TEXT NOT NULL,
    since_boot_ns INTEGER NOT NULL,
    target INTEGER REFERENCES event (id),
    temperature_cc INTEGER CHECK (temperature_cc BETWEEN -27315 AND 200000),
    humidity_cp INTEGER CHECK (humidity_cp BETWEEN 0 AND 10000),
    amount INTEGER,
    from_time TEXT CHECK (length(from_time) = 24),
    until_time TEXT CHECK (length(until_time) = 24),
    word TEXT NOT NULL,
    link BLOB NOT NULL CHECK (length(link) = 32)
) STRICT;
CREATE INDEX event_piece ON event (piece) WHERE piece IS NOT NULL;
CREATE INDEX event_bench ON event (happened) WHERE piece IS NULL;
CREATE INDEX event_reading ON event (place, happened) WHERE what = 13;
CREATE INDEX event_standing ON event (happened) WHERE what IN (17, 18, 25, 26, 27);
CREATE INDEX event_mix ON event (mix) WHERE mix IS NOT NULL;
CREATE INDEX event_target ON event (target) WHERE target IS NOT NULL;

-- Where the chain ends, so that rows cut off its end are missed too.
CREATE TABLE chain (
    one INTEGER PRIMARY KEY NOT NULL CHECK (one = 1),
    events INTEGER NOT NULL,
    last INTEGER NOT NULL,
    link BLOB NOT NULL CHECK (length(link) = 32)
) STRICT;

CREATE TABLE note (
    event INTEGER PRIMARY KEY NOT NULL REFERENCES event (id),
    text TEXT NOT NULL,
    seal BLOB NOT NULL CHECK (length(seal) = 16)
) STRICT;

-- Which pieces are in the house: follows from the events, kept so that opening a file of many years is
-- quick, set right in the same transaction as the event that moves it, and checked against the events.
CREATE TABLE in_hand (
    piece INTEGER PRIMARY KEY NOT NULL REFERENCES piece (id)
) STRICT;

CREATE TABLE photo (
    hash BLOB PRIMARY KEY NOT NULL CHECK (length(hash) = 32),
    size INTEGER NOT NULL CHECK (size >= 0),
    thumbnail BLOB NOT NULL,
    seal BLOB NOT NULL CHECK (length(seal) = 16)
) STRICT;

-- The pictures themselves, apart, so that lists of photos never read them.
CREATE TABLE photo_bytes (
    hash BLOB PRIMARY KEY NOT NULL REFERENCES photo (hash) CHECK (length(hash) = 32),
    bytes BLOB NOT NULL
) STRICT;

CREATE TABLE photo_use (
    id INTEGER PRIMARY KEY NOT NULL,
    photo BLOB NOT NULL REFERENCES photo (hash),
    piece INTEGER NOT NULL REFERENCES piece (id),
    event INTEGER REFERENCES event (id),
    purpose TEXT NOT NULL,
    seal BLOB NOT NULL CHECK (length(seal) = 16),
    UNIQUE (photo, piece, purpose)
) STRICT;
