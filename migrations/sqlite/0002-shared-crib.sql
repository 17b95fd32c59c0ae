CREATE TABLE people (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  role TEXT NOT NULL CHECK (role IN ('manager', 'instructor', 'member')),
  state TEXT NOT NULL CHECK (state IN ('active', 'left')),
  notes TEXT
) STRICT;

-- A key belongs to a person, whose role it has, or to a program with a role of its own.
CREATE TABLE new_keys (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  role TEXT CHECK (role IN ('manager', 'instructor', 'member')),
  person_id TEXT,
  scopes TEXT CHECK (json_valid(scopes)),
  key_sha256 TEXT NOT NULL CHECK (length(key_sha256) = 64),
  previous_sha256 TEXT CHECK (length(previous_sha256) = 64),
  previous_until TEXT,
  expires_at TEXT,
  revoked_at TEXT,
  CHECK ((role IS NULL) <> (person_id IS NULL))
) STRICT;

INSERT INTO new_keys (id, version, created_at, updated_at, name, role, key_sha256, revoked_at)
  SELECT id, version, created_at, updated_at, name, role, key_sha256, revoked_at FROM keys;
DROP TABLE keys;
ALTER TABLE new_keys RENAME TO keys;

CREATE UNIQUE INDEX keys_by_digest ON keys (key_sha256);
CREATE UNIQUE INDEX keys_by_previous_digest ON keys (previous_sha256) WHERE previous_sha256 IS NOT NULL;
CREATE INDEX keys_by_person ON keys (person_id, id) WHERE person_id IS NOT NULL;
CREATE INDEX keys_of_managers ON keys (role, id) WHERE role = 'manager' AND revoked_at IS NULL;
CREATE INDEX people_by_role ON people (role, state, id);

CREATE TABLE places (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('room', 'cabinet', 'rack', 'drawer', 'position')),
  inside_id TEXT,
  notes TEXT
) STRICT;

CREATE INDEX places_by_outer ON places (inside_id, id);

-- `number` gives every bit a lasting row number: the word index refers to it and lists go by it.
CREATE TABLE new_bits (
  number INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
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
  marked_max_rpm REAL CHECK (marked_max_rpm > 0),
  is_hand_feed_marked INTEGER CHECK (is_hand_feed_marked IN (0, 1)),
  tooth_material TEXT,
  purchased_on TEXT,
  cost TEXT CHECK (json_valid(cost)),
  smallest_usable_diameter_mm REAL CHECK (smallest_usable_diameter_mm > 0),
  home_place_id TEXT,
  inspection_interval_days INTEGER CHECK (inspection_interval_days >= 1),
  inspection_interval_m REAL CHECK (inspection_interval_m > 0),
  state TEXT NOT NULL CHECK (state IN ('in-rack', 'on-loan', 'at-sharpening', 'held', 'retired')),
  hold TEXT CHECK (json_valid(hold)),
  retirement TEXT CHECK (json_valid(retirement)),
  loan_id TEXT,
  sent_to_sharpening_at TEXT,
  place_id TEXT,
  missing_since TEXT,
  inspected_at TEXT,
  inspection_due_at TEXT,
  sharpened_at TEXT,
  used TEXT NOT NULL CHECK (json_valid(used)),
  words TEXT NOT NULL,
  facets TEXT NOT NULL,
  ceiling_rpm REAL NOT NULL,
  used_minutes REAL NOT NULL,
  reorder_reason TEXT
) STRICT;

INSERT INTO new_bits (
  id, version, created_at, updated_at, name, notes, form, shank_diameter_mm, wings, mass_g, run_out_mm,
  stick_out_mm, marked_max_rpm, state, used, words, facets, ceiling_rpm, used_minutes
)
  SELECT
    id, version, created_at, updated_at, name, notes, form, shank_diameter_mm, wings, mass_g, run_out_mm,
    stick_out_mm, marked_max_rpm, 'in-rack', '{"metres":0,"minutes":0,"uses":0,"metresSinceInspection":0,"equivalentMetresSinceSharpening":0}', '', '', 0, 0
  FROM bits ORDER BY id;
DROP TABLE bits;
ALTER TABLE new_bits RENAME TO bits;

CREATE INDEX bits_by_inspection_due ON bits (inspection_due_at, id) WHERE inspection_due_at IS NOT NULL;
CREATE INDEX bits_by_use ON bits (used_minutes DESC, id) WHERE used_minutes > 0;
CREATE INDEX bits_to_reorder ON bits (id) WHERE reorder_reason IS NOT NULL;
CREATE INDEX bits_by_home ON bits (home_place_id, id) WHERE home_place_id IS NOT NULL;
CREATE INDEX bits_by_place ON bits (place_id, id) WHERE place_id IS NOT NULL;
CREATE INDEX bits_missing ON bits (id) WHERE missing_since IS NOT NULL;

-- What a bit is found by: words as people type them, and facets that filters ask for.
CREATE VIRTUAL TABLE bit_index USING fts5 (
  words, facets, content = 'bits', content_rowid = 'number', detail = column, columnsize = 0, tokenize = 'unicode61'
);

-- Bits that were there before stand in the index without words until the service has made them.
INSERT INTO bit_index (bit_index) VALUES ('rebuild');

CREATE TRIGGER bits_are_indexed AFTER INSERT ON bits BEGIN
  INSERT INTO bit_index (rowid, words, facets) VALUES (new.number, new.words, new.facets);
END;

CREATE TRIGGER bits_are_indexed_again AFTER UPDATE OF words, facets ON bits
WHEN old.words IS NOT new.words OR old.facets IS NOT new.facets BEGIN
  INSERT INTO bit_index (bit_index, rowid, words, facets) VALUES ('delete', old.number, old.words, old.facets);
  INSERT INTO bit_index (rowid, words, facets) VALUES (new.number, new.words, new.facets);
END;

CREATE TRIGGER bits_leave_the_index AFTER DELETE ON bits BEGIN
  INSERT INTO bit_index (bit_index, rowid, words, facets) VALUES ('delete', old.number, old.words, old.facets);
END;

CREATE TABLE loans (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  person_id TEXT NOT NULL,
  router_id TEXT,
  job TEXT,
  due_at TEXT NOT NULL,
  returned_at TEXT,
  returned_place_id TEXT
) STRICT;

CREATE UNIQUE INDEX loans_out_once ON loans (bit_id) WHERE returned_at IS NULL;
CREATE INDEX loans_by_bit ON loans (bit_id, id);
CREATE INDEX loans_by_person ON loans (person_id, id);
CREATE INDEX loans_out ON loans (id) WHERE returned_at IS NULL;
CREATE INDEX loans_out_by_due ON loans (due_at, id) WHERE returned_at IS NULL;

CREATE TABLE inspections (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  person_id TEXT,
  inspected_at TEXT NOT NULL,
  findings TEXT NOT NULL CHECK (json_valid(findings)),
  effect TEXT NOT NULL CHECK (effect IN ('note', 'hold', 'retire')),
  notes TEXT
) STRICT;

CREATE INDEX inspections_by_bit ON inspections (bit_id, id);

CREATE TABLE sharpenings (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  person_id TEXT,
  sharpened_at TEXT NOT NULL,
  before TEXT NOT NULL CHECK (json_valid(before)),
  after TEXT NOT NULL CHECK (json_valid(after)),
  life_equivalent_m REAL NOT NULL CHECK (life_equivalent_m >= 0),
  notes TEXT
) STRICT;

CREATE INDEX sharpenings_by_bit ON sharpenings (bit_id, id);

CREATE TABLE speed_trials (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  router_id TEXT NOT NULL,
  person_id TEXT,
  tried_at TEXT NOT NULL,
  mark TEXT CHECK (json_valid(mark)),
  rpm REAL NOT NULL CHECK (rpm > 0),
  outcome TEXT NOT NULL CHECK (outcome IN ('ran-free', 'shook')),
  vibration_mm_per_s REAL CHECK (vibration_mm_per_s >= 0),
  run_out_mm REAL CHECK (run_out_mm >= 0),
  notes TEXT,
  set_aside TEXT CHECK (json_valid(set_aside))
) STRICT;

CREATE INDEX speed_trials_by_bit ON speed_trials (bit_id, id);
CREATE INDEX speed_trials_by_router ON speed_trials (router_id, id);

CREATE TABLE dial_readings (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  router_id TEXT NOT NULL,
  person_id TEXT,
  read_at TEXT NOT NULL,
  mark TEXT NOT NULL CHECK (json_valid(mark)),
  rpm REAL NOT NULL CHECK (rpm > 0),
  instrument TEXT NOT NULL
) STRICT;

CREATE INDEX dial_readings_by_router ON dial_readings (router_id, id);

CREATE TABLE collets (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  router_id TEXT NOT NULL,
  diameter_mm REAL NOT NULL CHECK (diameter_mm > 0),
  condition TEXT NOT NULL CHECK (condition IN ('good', 'worn', 'held', 'retired')),
  hold TEXT CHECK (json_valid(hold)),
  notes TEXT
) STRICT;

CREATE INDEX collets_by_router ON collets (router_id, id);

CREATE TABLE run_out_readings (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  router_id TEXT NOT NULL,
  collet_id TEXT,
  person_id TEXT,
  read_at TEXT NOT NULL,
  run_out_mm REAL NOT NULL CHECK (run_out_mm >= 0),
  instrument TEXT NOT NULL
) STRICT;

CREATE INDEX run_out_readings_by_bit ON run_out_readings (bit_id, id);
CREATE INDEX run_out_readings_by_router ON run_out_readings (router_id, id);

CREATE TABLE uses (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  router_id TEXT NOT NULL,
  plan_id TEXT,
  collet_id TEXT,
  person_id TEXT,
  wood_id TEXT NOT NULL,
  done_at TEXT NOT NULL,
  metres REAL NOT NULL CHECK (metres >= 0),
  minutes REAL NOT NULL CHECK (minutes >= 0),
  outcomes TEXT NOT NULL CHECK (json_valid(outcomes)),
  notes TEXT
) STRICT;

CREATE INDEX uses_by_bit ON uses (bit_id, id);
CREATE INDEX uses_by_router ON uses (router_id, id);
CREATE INDEX uses_by_person ON uses (person_id, id) WHERE person_id IS NOT NULL;

CREATE TABLE photographs (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  person_id TEXT,
  media_type TEXT NOT NULL CHECK (media_type IN ('image/jpeg', 'image/png', 'image/webp')),
  caption TEXT,
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  bytes BLOB NOT NULL
) STRICT;

CREATE INDEX photographs_by_bit ON photographs (bit_id, id);

-- What a router is fixed as, and since when its record's own readings count.
ALTER TABLE routers ADD COLUMN mountings TEXT CHECK (json_valid(mountings));
ALTER TABLE routers ADD COLUMN dial_read_at TEXT;
UPDATE routers SET dial_read_at = updated_at WHERE json_array_length(dial, '$.readings') > 0;
