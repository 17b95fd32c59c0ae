-- Who does what one process at a time may do, and until when.
CREATE TABLE leases (
  name TEXT PRIMARY KEY,
  holder TEXT NOT NULL,
  expires_at_ms INTEGER NOT NULL
) STRICT;
