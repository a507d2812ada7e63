-- Version 2: from the door and back to it. What a customer, a piece and a visit hold beside what the bench
-- needs, what is marked on photos, half filled pages, and the words that pieces and people are found by.

-- The parts of a row that have no column of their own, as one line of JSON; empty where there are none.
ALTER TABLE customer ADD COLUMN sheet TEXT NOT NULL DEFAULT '';
ALTER TABLE piece ADD COLUMN sheet TEXT NOT NULL DEFAULT '';

-- One stay of a piece: its condition, what came with it, what its owner agreed to.
CREATE TABLE visit (
    id INTEGER PRIMARY KEY NOT NULL,
    piece INTEGER NOT NULL REFERENCES piece (id),
    number INTEGER NOT NULL CHECK (number >= 1),
    sheet TEXT NOT NULL,
    seal BLOB NOT NULL CHECK (length(seal) = 16),
    UNIQUE (piece, number)
) STRICT;

-- What is told of a picture's use: when it was taken, of which visit it is, what is marked on it.
CREATE TABLE photo_note (
    use INTEGER PRIMARY KEY NOT NULL REFERENCES photo_use (id) ON DELETE CASCADE,
    sheet TEXT NOT NULL,
    seal BLOB NOT NULL CHECK (length(seal) = 16)
) STRICT;

-- Pages begun and not kept yet, so that a crash loses none.
CREATE TABLE draft (
    id INTEGER PRIMARY KEY NOT NULL,
    name TEXT NOT NULL UNIQUE CHECK (length(name) BETWEEN 1 AND 200),
    sheet TEXT NOT NULL,
    saved TEXT NOT NULL CHECK (length(saved) = 24),
    seal BLOB NOT NULL CHECK (length(seal) = 16)
) STRICT;

-- What can be looked for, in folded words. Follows from the rows above and is made anew where it does not.
-- entry: twice a piece's number, or twice a person's and one.
CREATE TABLE find_entry (
    entry INTEGER PRIMARY KEY NOT NULL,
    words TEXT NOT NULL
) STRICT;
CREATE TABLE find_word (
    id INTEGER PRIMARY KEY NOT NULL,
    word TEXT NOT NULL UNIQUE,
    uses INTEGER NOT NULL
) STRICT;
CREATE TABLE find_post (
    word INTEGER NOT NULL,
    entry INTEGER NOT NULL,
    PRIMARY KEY (word, entry)
) STRICT, WITHOUT ROWID;
-- A word with one letter left out, so that a slip of the finger finds it.
CREATE TABLE find_near (
    nearly TEXT NOT NULL,
    word INTEGER NOT NULL,
    PRIMARY KEY (nearly, word)
) STRICT, WITHOUT ROWID;
-- The digits of a phone number from each of its places on.
CREATE TABLE find_phone (
    digits TEXT NOT NULL,
    person INTEGER NOT NULL,
    PRIMARY KEY (digits, person)
) STRICT, WITHOUT ROWID;
CREATE INDEX find_phone_person ON find_phone (person);
