CREATE TABLE bits (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  notes TEXT,
  form TEXT NOT NULL CHECK (json_valid(form)),
  shank_diameter_mm REAL NOT NULL CHECK (shank_diameter_mm > 0),
  wings INTEGER NOT NULL CHECK (wings >= 1),
  mass_g REAL CHECK (mass_g > 0),
  run_out_mm REAL CHECK (run_out_mm >= 0),
  stick_out_mm REAL CHECK (stick_out_mm >= 0),
  marked_max_rpm REAL CHECK (marked_max_rpm > 0)
) STRICT;

CREATE TABLE routers (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  notes TEXT,
  min_rpm REAL NOT NULL CHECK (min_rpm > 0),
  max_rpm REAL NOT NULL CHECK (max_rpm >= min_rpm),
  dial TEXT CHECK (json_valid(dial)),
  input_power_w REAL CHECK (input_power_w > 0),
  collet_diameters_mm TEXT CHECK (json_valid(collet_diameters_mm))
) STRICT;

-- Only the SHA-256 of a key is kept: a copy of this file opens nothing.
CREATE TABLE keys (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  role TEXT NOT NULL CHECK (role IN ('manager', 'instructor', 'member')),
  key_sha256 TEXT NOT NULL CHECK (length(key_sha256) = 64),
  revoked_at TEXT
) STRICT;

CREATE UNIQUE INDEX keys_by_digest ON keys (key_sha256);

-- A plan as it was computed; it never changes.
CREATE TABLE plans (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT,
  request TEXT NOT NULL CHECK (json_valid(request)),
  plan TEXT NOT NULL CHECK (json_valid(plan))
) STRICT;

-- Every change with who, when and what. Each row's hash covers the one before it.
CREATE TABLE events (
  sequence INTEGER PRIMARY KEY,
  at TEXT NOT NULL,
  by TEXT NOT NULL,
  request_id TEXT NOT NULL,
  type TEXT NOT NULL,
  subject_id TEXT NOT NULL,
  subject_version INTEGER NOT NULL,
  data TEXT NOT NULL CHECK (json_valid(data)),
  previous_hash TEXT NOT NULL,
  hash TEXT NOT NULL UNIQUE
) STRICT;

CREATE INDEX events_by_subject ON events (subject_id, sequence);

CREATE TRIGGER events_are_not_changed BEFORE UPDATE ON events
BEGIN
  SELECT RAISE(ABORT, 'events are append-only');
END;

CREATE TRIGGER events_are_not_removed BEFORE DELETE ON events
BEGIN
  SELECT RAISE(ABORT, 'events are append-only');
END;

-- Answers to creating requests, so that the same request again gets the same answer.
CREATE TABLE answers (
  scope TEXT NOT NULL,
  idempotency_key TEXT NOT NULL,
  fingerprint TEXT NOT NULL,
  status INTEGER NOT NULL,
  headers TEXT NOT NULL CHECK (json_valid(headers)),
  body TEXT NOT NULL,
  expires_at TEXT NOT NULL,
  PRIMARY KEY (scope, idempotency_key)
) STRICT, WITHOUT ROWID;

CREATE INDEX answers_by_expiry ON answers (expires_at);
