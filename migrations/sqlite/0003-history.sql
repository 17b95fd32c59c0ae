-- Why a change was made, where its request said so.
ALTER TABLE events ADD COLUMN why TEXT;

-- The latest `at` up to and including each event. It never falls, whatever the clock did, so a time finds its place in the order.
ALTER TABLE events ADD COLUMN latest_at TEXT NOT NULL DEFAULT '';

DROP TRIGGER events_are_not_changed;
UPDATE events SET latest_at = so_far.latest_at
  FROM (SELECT sequence, max(at) OVER (ORDER BY sequence) AS latest_at FROM events) AS so_far
  WHERE so_far.sequence = events.sequence;
CREATE TRIGGER events_are_not_changed BEFORE UPDATE ON events
BEGIN
  SELECT RAISE(ABORT, 'events are append-only');
END;

CREATE INDEX events_by_key ON events (by, sequence);
CREATE INDEX events_by_type ON events (type, sequence);
-- One expression, because the planner takes two columns for no better than one. Neither holds a space.
CREATE INDEX events_by_key_and_type ON events (by || ' ' || type, sequence);
CREATE INDEX events_by_time ON events (latest_at, sequence);
-- Written while the clock was behind an earlier event: none, as a rule.
CREATE INDEX events_behind ON events (at, latest_at, sequence) WHERE at < latest_at;

-- Signed statements that the event at `sequence` had this hash.
CREATE TABLE checkpoints (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  sequence INTEGER NOT NULL CHECK (sequence >= 1),
  hash TEXT NOT NULL CHECK (length(hash) = 64),
  cause TEXT NOT NULL CHECK (cause IN ('asked', 'events', 'hour', 'new-key')),
  signing_key_id TEXT NOT NULL,
  statement TEXT NOT NULL
) STRICT;

CREATE INDEX checkpoints_by_sequence ON checkpoints (sequence, id);
