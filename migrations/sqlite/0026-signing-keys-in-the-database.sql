-- The signing keys are kept here, their private halves sealed; the file beside the database has only what opens them.
CREATE TABLE signing_keys (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  kid TEXT NOT NULL UNIQUE,
  x TEXT NOT NULL,
  seal TEXT NOT NULL,
  retired_at TEXT,
  compromised_at TEXT,
  lost_at TEXT
) STRICT;

-- One key signs at a time, whichever process it is in.
CREATE UNIQUE INDEX one_key_signs ON signing_keys ((retired_at IS NULL)) WHERE retired_at IS NULL;
