-- Files that changed the rack. The same bytes again are known by their SHA-256.
CREATE TABLE imports (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  format TEXT NOT NULL CHECK (format IN ('csv', 'ndjson')),
  mode TEXT NOT NULL CHECK (mode IN ('all-or-nothing', 'row-by-row')),
  state TEXT NOT NULL CHECK (state IN ('running', 'done')),
  rows INTEGER NOT NULL CHECK (rows >= 0),
  created INTEGER NOT NULL CHECK (created >= 0),
  changed INTEGER NOT NULL CHECK (changed >= 0),
  unchanged INTEGER NOT NULL CHECK (unchanged >= 0),
  refused INTEGER NOT NULL CHECK (refused >= 0),
  new_ids INTEGER NOT NULL CHECK (new_ids >= 0)
) STRICT;

CREATE INDEX imports_by_sha256 ON imports (sha256, id);
