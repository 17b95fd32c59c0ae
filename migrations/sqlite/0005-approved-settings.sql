-- Thresholds that the shop tightens for every plan: one row, from the first time somebody changes them.
CREATE TABLE shop_policies (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  layer TEXT NOT NULL CHECK (json_valid(layer))
) STRICT;

CREATE TABLE courses (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  notes TEXT,
  policy TEXT NOT NULL CHECK (json_valid(policy)),
  requirements TEXT NOT NULL CHECK (json_valid(requirements)),
  is_two_person INTEGER NOT NULL CHECK (is_two_person IN (0, 1)),
  ends_at TEXT
) STRICT;

CREATE TABLE enrolments (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  course_id TEXT NOT NULL,
  person_id TEXT NOT NULL,
  part TEXT NOT NULL CHECK (part IN ('instructor', 'student')),
  ended_at TEXT
) STRICT;

CREATE UNIQUE INDEX enrolments_once ON enrolments (course_id, person_id) WHERE ended_at IS NULL;
CREATE INDEX enrolments_by_course ON enrolments (course_id, id);
CREATE INDEX enrolments_by_person ON enrolments (person_id, id);

CREATE TABLE qualifications (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  person_id TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('safety-test', 'demonstration', 'parental-consent', 'instruction')),
  skill TEXT,
  score_percent REAL CHECK (score_percent BETWEEN 0 AND 100),
  given_at TEXT NOT NULL,
  expires_at TEXT,
  signed_by TEXT NOT NULL,
  notes TEXT,
  withdrawn TEXT CHECK (json_valid(withdrawn))
) STRICT;

CREATE INDEX qualifications_by_person ON qualifications (person_id, id);

CREATE TABLE approvals (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  course_id TEXT NOT NULL,
  plan_id TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  router_id TEXT NOT NULL,
  mounting TEXT NOT NULL,
  wood_ids TEXT NOT NULL CHECK (json_valid(wood_ids)),
  person_ids TEXT CHECK (json_valid(person_ids)),
  skill TEXT,
  supervision TEXT NOT NULL,
  valid_from TEXT NOT NULL,
  valid_until TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('draft', 'issued', 'lapsed', 'withdrawn', 'replaced')),
  setting TEXT NOT NULL CHECK (json_valid(setting)),
  result_digest TEXT NOT NULL,
  input_digest TEXT NOT NULL,
  engine_version TEXT NOT NULL,
  drafted_by TEXT NOT NULL,
  issued_at TEXT,
  issued_by TEXT,
  lapse_id TEXT,
  withdrawal TEXT CHECK (json_valid(withdrawal)),
  replaced_by_id TEXT,
  replaces_id TEXT
) STRICT;

CREATE INDEX approvals_in_force_by_bit ON approvals (bit_id, id) WHERE state = 'issued';
CREATE INDEX approvals_in_force_by_router ON approvals (router_id, id) WHERE state = 'issued';
CREATE INDEX approvals_in_force ON approvals (course_id, bit_id, router_id) WHERE state = 'issued';
CREATE INDEX approvals_by_course ON approvals (course_id, id);
CREATE INDEX approvals_by_course_and_end ON approvals (course_id, valid_until) WHERE state = 'issued';
CREATE INDEX approvals_by_bit ON approvals (bit_id, id);
CREATE INDEX approvals_ended ON approvals (valid_until) WHERE state IN ('lapsed', 'withdrawn', 'replaced');

-- Why settings lapsed: one row for all that one change ended in the same way.
CREATE TABLE lapses (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  because TEXT NOT NULL,
  cause TEXT NOT NULL CHECK (json_valid(cause)),
  before TEXT NOT NULL CHECK (json_valid(before)),
  after TEXT CHECK (json_valid(after))
) STRICT;

-- What an approval was made from, whole: it never changes.
CREATE TABLE approval_grounds (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  approval_id TEXT NOT NULL,
  request TEXT NOT NULL CHECK (json_valid(request)),
  results TEXT NOT NULL CHECK (json_valid(results))
) STRICT;

CREATE UNIQUE INDEX approval_grounds_by_approval ON approval_grounds (approval_id);

CREATE TABLE checks (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  person_id TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  router_id TEXT NOT NULL,
  asked TEXT NOT NULL CHECK (json_valid(asked)),
  is_allowed INTEGER NOT NULL CHECK (is_allowed IN (0, 1)),
  reasons TEXT NOT NULL CHECK (json_valid(reasons)),
  approval_id TEXT
) STRICT;

CREATE INDEX checks_by_person ON checks (person_id, id);
CREATE INDEX checks_by_bit ON checks (bit_id, id);
