-- What a record was after an event, as a digest that the event's hash covers. Events from before say nothing of it.
ALTER TABLE events ADD COLUMN record_digest TEXT;

-- Where the digests begin: what was entered before has no event that must be there for it.
CREATE INDEX events_with_digest ON events (sequence) WHERE record_digest IS NOT NULL;
