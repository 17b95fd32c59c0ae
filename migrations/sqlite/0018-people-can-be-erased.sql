-- A person's name and notes are in their record alone; the history holds a digest of them, salted with what only the record has.
-- People of before have no salt: what the history says of them stays.
ALTER TABLE people ADD COLUMN salt TEXT;
ALTER TABLE people ADD COLUMN erased_at TEXT;
