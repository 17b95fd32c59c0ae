-- What a record was after an event, as a digest that the event's hash covers. Events from before say nothing of it.
ALTER TABLE events ADD COLUMN record_digest TEXT;
