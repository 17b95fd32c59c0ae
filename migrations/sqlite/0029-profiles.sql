-- The shop's own profiles, and how they were made.
CREATE TABLE profiles (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  external_id TEXT,
  notes TEXT,
  shape TEXT NOT NULL,
  made TEXT NOT NULL
) STRICT;

CREATE INDEX profiles_by_external_id ON profiles (external_id, id) WHERE external_id IS NOT NULL;
