-- A trial of the next version: a new table, a new column, and a table rebuilt in the way SQLite asks for.
CREATE TABLE trial_shelf (
    id INTEGER PRIMARY KEY NOT NULL,
    label TEXT NOT NULL UNIQUE
) STRICT;
INSERT INTO trial_shelf (label) SELECT name FROM place;
ALTER TABLE customer ADD COLUMN trial_greeting TEXT;
CREATE TABLE place_new (
    id INTEGER PRIMARY KEY NOT NULL,
    name TEXT NOT NULL,
    kind TEXT NOT NULL,
    slots INTEGER NOT NULL CHECK (slots >= 0),
    seal BLOB NOT NULL CHECK (length(seal) = 16),
    trial_shelf INTEGER REFERENCES trial_shelf (id)
) STRICT;
INSERT INTO place_new (id, name, kind, slots, seal) SELECT id, name, kind, slots, seal FROM place;
DROP TABLE place;
ALTER TABLE place_new RENAME TO place;
