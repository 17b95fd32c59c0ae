-- A reading that somebody stands by although it does not fit the router.
ALTER TABLE dial_readings ADD COLUMN is_confirmed INTEGER CHECK (is_confirmed IN (0, 1));

-- What is derived and kept, with the version of what derived it: where the program's differs, it is derived again at the start.
CREATE TABLE derivations (
  name TEXT PRIMARY KEY,
  version TEXT NOT NULL
) STRICT;
