-- Who does what one process at a time may do, and until when.
CREATE TABLE leases (
  name TEXT PRIMARY KEY,
  holder TEXT NOT NULL,
  expires_at_ms BIGINT NOT NULL
);

-- How many requests each process has counted of each caller in the present minute. After a crash it may be empty.
CREATE UNLOGGED TABLE request_counts (
  caller TEXT NOT NULL,
  process TEXT NOT NULL,
  count BIGINT NOT NULL,
  expires_at_ms BIGINT NOT NULL,
  PRIMARY KEY (caller, process)
);
