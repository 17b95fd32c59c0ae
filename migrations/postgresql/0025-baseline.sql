-- Everything that SQLite's migrations up to 0025 make, as PostgreSQL writes it.

-- A text as it is compared: what `folded` in services/shop/src/store/folded.ts makes of it. The list is Unicode's marks.
CREATE FUNCTION folded(given TEXT) RETURNS TEXT LANGUAGE SQL IMMUTABLE PARALLEL SAFE RETURN CASE
  WHEN octet_length(given) = char_length(given) THEN lower(given) COLLATE "C"
  ELSE lower(regexp_replace(normalize(given, NFKD), '['
    || '\u0300-\u036f\u0483-\u0489\u0591-\u05bd\u05bf\u05c1-\u05c2\u05c4-\u05c5\u05c7\u0610-\u061a\u064b-\u065f\u0670'
    || '\u06d6-\u06dc\u06df-\u06e4\u06e7-\u06e8\u06ea-\u06ed\u0711\u0730-\u074a\u07a6-\u07b0\u07eb-\u07f3\u07fd\u0816-\u0819'
    || '\u081b-\u0823\u0825-\u0827\u0829-\u082d\u0859-\u085b\u0897-\u089f\u08ca-\u08e1\u08e3-\u0903\u093a-\u093c\u093e-\u094f'
    || '\u0951-\u0957\u0962-\u0963\u0981-\u0983\u09bc\u09be-\u09c4\u09c7-\u09c8\u09cb-\u09cd\u09d7\u09e2-\u09e3\u09fe'
    || '\u0a01-\u0a03\u0a3c\u0a3e-\u0a42\u0a47-\u0a48\u0a4b-\u0a4d\u0a51\u0a70-\u0a71\u0a75\u0a81-\u0a83\u0abc\u0abe-\u0ac5'
    || '\u0ac7-\u0ac9\u0acb-\u0acd\u0ae2-\u0ae3\u0afa-\u0aff\u0b01-\u0b03\u0b3c\u0b3e-\u0b44\u0b47-\u0b48\u0b4b-\u0b4d'
    || '\u0b55-\u0b57\u0b62-\u0b63\u0b82\u0bbe-\u0bc2\u0bc6-\u0bc8\u0bca-\u0bcd\u0bd7\u0c00-\u0c04\u0c3c\u0c3e-\u0c44'
    || '\u0c46-\u0c48\u0c4a-\u0c4d\u0c55-\u0c56\u0c62-\u0c63\u0c81-\u0c83\u0cbc\u0cbe-\u0cc4\u0cc6-\u0cc8\u0cca-\u0ccd'
    || '\u0cd5-\u0cd6\u0ce2-\u0ce3\u0cf3\u0d00-\u0d03\u0d3b-\u0d3c\u0d3e-\u0d44\u0d46-\u0d48\u0d4a-\u0d4d\u0d57\u0d62-\u0d63'
    || '\u0d81-\u0d83\u0dca\u0dcf-\u0dd4\u0dd6\u0dd8-\u0ddf\u0df2-\u0df3\u0e31\u0e34-\u0e3a\u0e47-\u0e4e\u0eb1\u0eb4-\u0ebc'
    || '\u0ec8-\u0ece\u0f18-\u0f19\u0f35\u0f37\u0f39\u0f3e-\u0f3f\u0f71-\u0f84\u0f86-\u0f87\u0f8d-\u0f97\u0f99-\u0fbc\u0fc6'
    || '\u102b-\u103e\u1056-\u1059\u105e-\u1060\u1062-\u1064\u1067-\u106d\u1071-\u1074\u1082-\u108d\u108f\u109a-\u109d'
    || '\u135d-\u135f\u1712-\u1715\u1732-\u1734\u1752-\u1753\u1772-\u1773\u17b4-\u17d3\u17dd\u180b-\u180d\u180f\u1885-\u1886'
    || '\u18a9\u1920-\u192b\u1930-\u193b\u1a17-\u1a1b\u1a55-\u1a5e\u1a60-\u1a7c\u1a7f\u1ab0-\u1add\u1ae0-\u1aeb\u1b00-\u1b04'
    || '\u1b34-\u1b44\u1b6b-\u1b73\u1b80-\u1b82\u1ba1-\u1bad\u1be6-\u1bf3\u1c24-\u1c37\u1cd0-\u1cd2\u1cd4-\u1ce8\u1ced\u1cf4'
    || '\u1cf7-\u1cf9\u1dc0-\u1dff\u20d0-\u20f0\u2cef-\u2cf1\u2d7f\u2de0-\u2dff\u302a-\u302f\u3099-\u309a\ua66f-\ua672'
    || '\ua674-\ua67d\ua69e-\ua69f\ua6f0-\ua6f1\ua802\ua806\ua80b\ua823-\ua827\ua82c\ua880-\ua881\ua8b4-\ua8c5\ua8e0-\ua8f1'
    || '\ua8ff\ua926-\ua92d\ua947-\ua953\ua980-\ua983\ua9b3-\ua9c0\ua9e5\uaa29-\uaa36\uaa43\uaa4c-\uaa4d\uaa7b-\uaa7d\uaab0'
    || '\uaab2-\uaab4\uaab7-\uaab8\uaabe-\uaabf\uaac1\uaaeb-\uaaef\uaaf5-\uaaf6\uabe3-\uabea\uabec-\uabed\ufb1e\ufe00-\ufe0f'
    || '\ufe20-\ufe2f\U000101fd\U000102e0\U00010376-\U0001037a\U00010a01-\U00010a03\U00010a05-\U00010a06\U00010a0c-\U00010a0f'
    || '\U00010a38-\U00010a3a\U00010a3f\U00010ae5-\U00010ae6\U00010d24-\U00010d27\U00010d69-\U00010d6d\U00010eab-\U00010eac'
    || '\U00010efa-\U00010eff\U00010f46-\U00010f50\U00010f82-\U00010f85\U00011000-\U00011002\U00011038-\U00011046\U00011070'
    || '\U00011073-\U00011074\U0001107f-\U00011082\U000110b0-\U000110ba\U000110c2\U00011100-\U00011102\U00011127-\U00011134'
    || '\U00011145-\U00011146\U00011173\U00011180-\U00011182\U000111b3-\U000111c0\U000111c9-\U000111cc\U000111ce-\U000111cf'
    || '\U0001122c-\U00011237\U0001123e\U00011241\U000112df-\U000112ea\U00011300-\U00011303\U0001133b-\U0001133c'
    || '\U0001133e-\U00011344\U00011347-\U00011348\U0001134b-\U0001134d\U00011357\U00011362-\U00011363\U00011366-\U0001136c'
    || '\U00011370-\U00011374\U000113b8-\U000113c0\U000113c2\U000113c5\U000113c7-\U000113ca\U000113cc-\U000113d0\U000113d2'
    || '\U000113e1-\U000113e2\U00011435-\U00011446\U0001145e\U000114b0-\U000114c3\U000115af-\U000115b5\U000115b8-\U000115c0'
    || '\U000115dc-\U000115dd\U00011630-\U00011640\U000116ab-\U000116b7\U0001171d-\U0001172b\U0001182c-\U0001183a'
    || '\U00011930-\U00011935\U00011937-\U00011938\U0001193b-\U0001193e\U00011940\U00011942-\U00011943\U000119d1-\U000119d7'
    || '\U000119da-\U000119e0\U000119e4\U00011a01-\U00011a0a\U00011a33-\U00011a39\U00011a3b-\U00011a3e\U00011a47'
    || '\U00011a51-\U00011a5b\U00011a8a-\U00011a99\U00011b60-\U00011b67\U00011c2f-\U00011c36\U00011c38-\U00011c3f'
    || '\U00011c92-\U00011ca7\U00011ca9-\U00011cb6\U00011d31-\U00011d36\U00011d3a\U00011d3c-\U00011d3d\U00011d3f-\U00011d45'
    || '\U00011d47\U00011d8a-\U00011d8e\U00011d90-\U00011d91\U00011d93-\U00011d97\U00011ef3-\U00011ef6\U00011f00-\U00011f01'
    || '\U00011f03\U00011f34-\U00011f3a\U00011f3e-\U00011f42\U00011f5a\U00013440\U00013447-\U00013455\U0001611e-\U0001612f'
    || '\U00016af0-\U00016af4\U00016b30-\U00016b36\U00016f4f\U00016f51-\U00016f87\U00016f8f-\U00016f92\U00016fe4'
    || '\U00016ff0-\U00016ff1\U0001bc9d-\U0001bc9e\U0001cf00-\U0001cf2d\U0001cf30-\U0001cf46\U0001d165-\U0001d169'
    || '\U0001d16d-\U0001d172\U0001d17b-\U0001d182\U0001d185-\U0001d18b\U0001d1aa-\U0001d1ad\U0001d242-\U0001d244'
    || '\U0001da00-\U0001da36\U0001da3b-\U0001da6c\U0001da75\U0001da84\U0001da9b-\U0001da9f\U0001daa1-\U0001daaf'
    || '\U0001e000-\U0001e006\U0001e008-\U0001e018\U0001e01b-\U0001e021\U0001e023-\U0001e024\U0001e026-\U0001e02a\U0001e08f'
    || '\U0001e130-\U0001e136\U0001e2ae\U0001e2ec-\U0001e2ef\U0001e4ec-\U0001e4ef\U0001e5ee-\U0001e5ef\U0001e6e3\U0001e6e6'
    || '\U0001e6ee-\U0001e6ef\U0001e6f5\U0001e8d0-\U0001e8d6\U0001e944-\U0001e94a\U000e0100-\U000e01ef'
    || ']', '', 'g') COLLATE "und-x-icu") COLLATE "C"
END;

-- What a bit is found by: its words and its facets, told apart by their first letter.
CREATE FUNCTION terms_of(words TEXT, facets TEXT) RETURNS TSVECTOR LANGUAGE SQL IMMUTABLE PARALLEL SAFE RETURN array_to_tsvector(
  array_remove(regexp_split_to_array(regexp_replace(words, '(^| )(?=[^ ])', '\1w', 'g'), ' '), '')
  || array_remove(regexp_split_to_array(regexp_replace(facets, '(^| )(?=[^ ])', '\1f', 'g'), ' '), '')
);

CREATE TABLE answers (
  scope TEXT NOT NULL,
  idempotency_key TEXT NOT NULL,
  fingerprint TEXT NOT NULL,
  status BIGINT NOT NULL,
  headers JSON NOT NULL,
  body TEXT NOT NULL,
  expires_at TEXT NOT NULL,
  PRIMARY KEY (scope, idempotency_key)
);

CREATE TABLE approval_grounds (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  approval_id TEXT NOT NULL,
  request JSON NOT NULL,
  results JSON NOT NULL
);

CREATE TABLE approvals (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  course_id TEXT NOT NULL,
  plan_id TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  router_id TEXT NOT NULL,
  mounting TEXT NOT NULL,
  wood_ids JSON NOT NULL,
  person_ids JSON,
  skill TEXT,
  supervision TEXT NOT NULL,
  valid_from TEXT NOT NULL,
  valid_until TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('draft', 'issued', 'lapsed', 'withdrawn', 'replaced')),
  setting JSON NOT NULL,
  result_digest TEXT NOT NULL,
  input_digest TEXT NOT NULL,
  engine_version TEXT NOT NULL,
  drafted_by TEXT NOT NULL,
  issued_at TEXT,
  issued_by TEXT,
  lapse_id TEXT,
  withdrawal JSON,
  replaced_by_id TEXT,
  replaces_id TEXT,
  sheets_until TEXT,
  is_two_person BOOLEAN NOT NULL DEFAULT FALSE,
  requirements JSON NOT NULL DEFAULT '{}',
  status_index BIGINT
);

CREATE TABLE bits (
  number BIGINT GENERATED BY DEFAULT AS IDENTITY PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  notes TEXT,
  form JSON NOT NULL,
  shank_diameter_mm DOUBLE PRECISION NOT NULL CHECK (shank_diameter_mm > 0),
  wings BIGINT NOT NULL CHECK (wings >= 1),
  mass_g DOUBLE PRECISION CHECK (mass_g > 0),
  run_out_mm DOUBLE PRECISION CHECK (run_out_mm >= 0),
  stick_out_mm DOUBLE PRECISION CHECK (stick_out_mm >= 0),
  marked_max_rpm DOUBLE PRECISION CHECK (marked_max_rpm > 0),
  is_hand_feed_marked BOOLEAN,
  tooth_material TEXT,
  purchased_on TEXT,
  cost JSON,
  smallest_usable_diameter_mm DOUBLE PRECISION CHECK (smallest_usable_diameter_mm > 0),
  home_place_id TEXT,
  inspection_interval_days BIGINT CHECK (inspection_interval_days >= 1),
  inspection_interval_m DOUBLE PRECISION CHECK (inspection_interval_m > 0),
  state TEXT NOT NULL CHECK (state IN ('in-rack', 'on-loan', 'at-sharpening', 'held', 'retired')),
  hold JSON,
  retirement JSON,
  loan_id TEXT,
  sent_to_sharpening_at TEXT,
  place_id TEXT,
  missing_since TEXT,
  inspected_at TEXT,
  inspection_due_at TEXT,
  sharpened_at TEXT,
  used JSON NOT NULL,
  words TEXT NOT NULL,
  facets TEXT NOT NULL,
  ceiling_rpm DOUBLE PRECISION NOT NULL,
  used_minutes DOUBLE PRECISION NOT NULL,
  reorder_reason TEXT,
  guide_rpm DOUBLE PRECISION NOT NULL DEFAULT 0,
  nominal_diameter_mm DOUBLE PRECISION CHECK (nominal_diameter_mm > 0),
  is_end_cutting BOOLEAN,
  external_id TEXT,
  wastes_groove_mm DOUBLE PRECISION,
  terms TSVECTOR NOT NULL GENERATED ALWAYS AS (terms_of(words, facets)) STORED
);

CREATE TABLE checkpoints (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  sequence BIGINT NOT NULL CHECK (sequence >= 1),
  hash TEXT NOT NULL CHECK (length(hash) = 64),
  cause TEXT NOT NULL CHECK (cause IN ('asked', 'events', 'hour', 'new-key')),
  signing_key_id TEXT NOT NULL,
  statement TEXT NOT NULL
);

CREATE TABLE checks (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  person_id TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  router_id TEXT NOT NULL,
  asked JSON NOT NULL,
  is_allowed BOOLEAN NOT NULL,
  reasons JSON NOT NULL,
  approval_id TEXT
);

CREATE TABLE collets (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  router_id TEXT NOT NULL,
  diameter_mm DOUBLE PRECISION NOT NULL CHECK (diameter_mm > 0),
  condition TEXT NOT NULL CHECK (condition IN ('good', 'worn', 'held', 'retired')),
  hold JSON,
  notes TEXT
);

CREATE TABLE courses (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  notes TEXT,
  policy JSON NOT NULL,
  requirements JSON NOT NULL,
  is_two_person BOOLEAN NOT NULL,
  ends_at TEXT
);

CREATE TABLE derivations (
  name TEXT PRIMARY KEY,
  version TEXT NOT NULL
);

CREATE TABLE dial_readings (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  router_id TEXT NOT NULL,
  person_id TEXT,
  read_at TEXT NOT NULL,
  mark JSON NOT NULL,
  rpm DOUBLE PRECISION NOT NULL CHECK (rpm > 0),
  instrument TEXT NOT NULL,
  is_confirmed BOOLEAN
);

CREATE TABLE enrolments (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  course_id TEXT NOT NULL,
  person_id TEXT NOT NULL,
  part TEXT NOT NULL CHECK (part IN ('instructor', 'student')),
  ended_at TEXT
);

CREATE TABLE events (
  sequence BIGINT PRIMARY KEY,
  at TEXT NOT NULL,
  by TEXT NOT NULL,
  request_id TEXT NOT NULL,
  type TEXT NOT NULL,
  subject_id TEXT NOT NULL,
  subject_version BIGINT NOT NULL,
  data JSON NOT NULL,
  previous_hash TEXT NOT NULL,
  hash TEXT NOT NULL,
  why TEXT,
  latest_at TEXT NOT NULL,
  record_digest TEXT
);

CREATE TABLE imports (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  format TEXT NOT NULL CHECK (format IN ('csv', 'ndjson')),
  mode TEXT NOT NULL CHECK (mode IN ('all-or-nothing', 'row-by-row')),
  state TEXT NOT NULL CHECK (state IN ('running', 'done')),
  rows BIGINT NOT NULL CHECK (rows >= 0),
  created BIGINT NOT NULL CHECK (created >= 0),
  changed BIGINT NOT NULL CHECK (changed >= 0),
  unchanged BIGINT NOT NULL CHECK (unchanged >= 0),
  refused BIGINT NOT NULL CHECK (refused >= 0),
  new_ids BIGINT NOT NULL CHECK (new_ids >= 0)
);

CREATE TABLE inspections (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  person_id TEXT,
  inspected_at TEXT NOT NULL,
  findings JSON NOT NULL,
  effect TEXT NOT NULL CHECK (effect IN ('note', 'hold', 'retire')),
  notes TEXT
);

CREATE TABLE keys (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  role TEXT CHECK (role IN ('manager', 'instructor', 'member')),
  person_id TEXT,
  scopes JSON,
  key_sha256 TEXT NOT NULL CHECK (length(key_sha256) = 64),
  previous_sha256 TEXT CHECK (length(previous_sha256) = 64),
  previous_until TEXT,
  expires_at TEXT,
  revoked_at TEXT,
  CHECK ((role IS NULL) <> (person_id IS NULL))
);

CREATE TABLE lapses (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  reason TEXT NOT NULL,
  cause JSON NOT NULL,
  before JSON NOT NULL,
  after JSON
);

CREATE TABLE loans (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  person_id TEXT NOT NULL,
  router_id TEXT,
  job TEXT,
  due_at TEXT NOT NULL,
  returned_at TEXT,
  returned_place_id TEXT,
  lent_by TEXT,
  returned_by TEXT
);

CREATE TABLE people (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  role TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('active', 'left')),
  notes TEXT,
  salt TEXT,
  erased_at TEXT,
  external_id TEXT
);

CREATE TABLE photographs (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  person_id TEXT,
  media_type TEXT NOT NULL CHECK (media_type IN ('image/jpeg', 'image/png', 'image/webp')),
  caption TEXT,
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  bytes BYTEA NOT NULL
);

CREATE TABLE places (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('room', 'cabinet', 'rack', 'drawer', 'position')),
  inside_id TEXT,
  notes TEXT
);

CREATE TABLE plans (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT,
  request JSON NOT NULL,
  plan JSON NOT NULL,
  corrections JSON,
  external_id TEXT,
  bit_id TEXT GENERATED ALWAYS AS (request #>> '{bit,id}') STORED,
  router_id TEXT GENERATED ALWAYS AS (request #>> '{router,id}') STORED,
  wood_id TEXT GENERATED ALWAYS AS (request #>> '{woodId}') STORED,
  cut_kind TEXT GENERATED ALWAYS AS (request #>> '{cut,kind}') STORED,
  verdict TEXT GENERATED ALWAYS AS (plan #>> '{verdict}') STORED
);

CREATE TABLE qualifications (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  person_id TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('safety-test', 'demonstration', 'parental-consent', 'instruction')),
  skill TEXT,
  score_percent DOUBLE PRECISION CHECK (score_percent BETWEEN 0 AND 100),
  given_at TEXT NOT NULL,
  expires_at TEXT,
  signed_by TEXT NOT NULL,
  notes TEXT,
  withdrawn JSON,
  course_id TEXT
);

CREATE TABLE routers (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  notes TEXT,
  min_rpm DOUBLE PRECISION NOT NULL CHECK (min_rpm > 0),
  max_rpm DOUBLE PRECISION NOT NULL CHECK (max_rpm >= min_rpm),
  dial JSON,
  input_power_w DOUBLE PRECISION CHECK (input_power_w > 0),
  collet_diameters_mm JSON,
  mountings JSON,
  dial_read_at TEXT,
  external_id TEXT
);

CREATE TABLE run_out_readings (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  router_id TEXT NOT NULL,
  collet_id TEXT,
  person_id TEXT,
  read_at TEXT NOT NULL,
  run_out_mm DOUBLE PRECISION NOT NULL CHECK (run_out_mm >= 0),
  instrument TEXT NOT NULL
);

CREATE TABLE sharpenings (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  person_id TEXT,
  sharpened_at TEXT NOT NULL,
  before JSON NOT NULL,
  after JSON NOT NULL,
  life_equivalent_m DOUBLE PRECISION NOT NULL CHECK (life_equivalent_m >= 0),
  notes TEXT,
  repaired JSON
);

CREATE TABLE shop_policies (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  layer JSON NOT NULL,
  are_loans_shown BOOLEAN
);

CREATE TABLE speed_trials (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  router_id TEXT NOT NULL,
  person_id TEXT,
  tried_at TEXT NOT NULL,
  mark JSON,
  rpm DOUBLE PRECISION NOT NULL CHECK (rpm > 0),
  outcome TEXT NOT NULL CHECK (outcome IN ('ran-free', 'shook')),
  vibration_mm_per_s DOUBLE PRECISION CHECK (vibration_mm_per_s >= 0),
  run_out_mm DOUBLE PRECISION CHECK (run_out_mm >= 0),
  notes TEXT,
  set_aside JSON
);

CREATE TABLE uses (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  router_id TEXT NOT NULL,
  plan_id TEXT,
  collet_id TEXT,
  person_id TEXT,
  wood_id TEXT NOT NULL,
  done_at TEXT NOT NULL,
  metres DOUBLE PRECISION NOT NULL CHECK (metres >= 0),
  minutes DOUBLE PRECISION NOT NULL CHECK (minutes >= 0),
  outcomes JSON NOT NULL,
  notes TEXT,
  without_loan_reason TEXT
);

CREATE INDEX answers_by_expiry ON answers (expires_at);
CREATE UNIQUE INDEX approval_grounds_by_approval ON approval_grounds (approval_id);
CREATE INDEX approvals_by_bit ON approvals (bit_id, id);
CREATE INDEX approvals_by_bit_and_state ON approvals (bit_id, state, id);
CREATE INDEX approvals_by_course ON approvals (course_id, id);
CREATE INDEX approvals_by_course_and_end ON approvals (course_id, valid_until) WHERE state = 'issued';
CREATE INDEX approvals_by_course_and_state ON approvals (course_id, state, id);
CREATE INDEX approvals_by_pair ON approvals (course_id, bit_id, router_id, id);
CREATE INDEX approvals_by_state ON approvals (state, id);
CREATE UNIQUE INDEX approvals_by_status_index ON approvals (status_index);
CREATE INDEX approvals_cut_short ON approvals (sheets_until, status_index) WHERE sheets_until IS NOT NULL;
CREATE INDEX approvals_ended ON approvals (valid_until, status_index) WHERE state IN ('lapsed', 'withdrawn', 'replaced');
CREATE INDEX approvals_in_force ON approvals (course_id, bit_id, router_id, valid_until) WHERE state = 'issued';
CREATE INDEX approvals_in_force_by_bit ON approvals (bit_id, id) WHERE state = 'issued';
CREATE INDEX approvals_in_force_by_router ON approvals (router_id, id) WHERE state = 'issued';
CREATE INDEX bits_by_external_id ON bits (external_id, id) WHERE external_id IS NOT NULL;
CREATE INDEX bits_by_groove_they_waste ON bits (wastes_groove_mm DESC, number) WHERE wastes_groove_mm IS NOT NULL;
CREATE INDEX bits_by_home ON bits (home_place_id, id) WHERE home_place_id IS NOT NULL;
CREATE INDEX bits_by_inspection_due ON bits (inspection_due_at, id) WHERE inspection_due_at IS NOT NULL;
CREATE INDEX bits_by_place ON bits (place_id, id) WHERE place_id IS NOT NULL;
CREATE INDEX bits_by_use ON bits (used_minutes DESC, id) WHERE used_minutes > 0;
CREATE INDEX bits_held ON bits (id) WHERE state = 'held';
CREATE INDEX bits_missing ON bits (id) WHERE missing_since IS NOT NULL;
CREATE INDEX bits_to_reorder ON bits (id) WHERE reorder_reason IS NOT NULL;
CREATE INDEX bits_without_words ON bits (number) WHERE words = '';
CREATE INDEX checkpoints_by_sequence ON checkpoints (sequence, id);
CREATE INDEX checks_by_bit ON checks (bit_id, id);
CREATE INDEX checks_by_person ON checks (person_id, id);
CREATE INDEX collets_by_router ON collets (router_id, id);
CREATE INDEX collets_held ON collets (id) WHERE condition = 'held';
CREATE INDEX dial_readings_by_router ON dial_readings (router_id, id);
CREATE INDEX enrolments_by_course ON enrolments (course_id, id);
CREATE INDEX enrolments_by_person ON enrolments (person_id, id);
CREATE UNIQUE INDEX enrolments_once ON enrolments (course_id, person_id) WHERE ended_at IS NULL;
CREATE INDEX events_behind ON events (at, latest_at, sequence) WHERE at < latest_at;
CREATE INDEX events_by_key ON events (by, sequence);
CREATE INDEX events_by_key_and_type ON events ((by || ' ' || type), sequence);
CREATE INDEX events_by_subject ON events (subject_id, sequence);
CREATE INDEX events_by_time ON events (latest_at, sequence);
CREATE INDEX events_by_type ON events (type, sequence);
CREATE INDEX events_with_digest ON events (sequence) WHERE record_digest IS NOT NULL;
CREATE INDEX imports_by_sha256 ON imports (sha256, id);
CREATE INDEX inspections_by_bit ON inspections (bit_id, id);
CREATE UNIQUE INDEX keys_by_digest ON keys (key_sha256);
CREATE INDEX keys_by_person ON keys (person_id, id) WHERE person_id IS NOT NULL;
CREATE UNIQUE INDEX keys_by_previous_digest ON keys (previous_sha256) WHERE previous_sha256 IS NOT NULL;
CREATE INDEX keys_of_managers ON keys (role, id) WHERE role = 'manager' AND revoked_at IS NULL;
CREATE INDEX loans_by_bit ON loans (bit_id, id);
CREATE INDEX loans_by_person ON loans (person_id, id);
CREATE INDEX loans_out ON loans (id) WHERE returned_at IS NULL;
CREATE INDEX loans_out_by_due ON loans (due_at, id) WHERE returned_at IS NULL;
CREATE UNIQUE INDEX loans_out_once ON loans (bit_id) WHERE returned_at IS NULL;
CREATE INDEX people_by_external_id ON people (external_id, id) WHERE external_id IS NOT NULL;
CREATE INDEX people_by_role ON people (role, state, id);
CREATE INDEX photographs_by_bit ON photographs (bit_id, id);
CREATE INDEX places_by_outer ON places (inside_id, id);
CREATE INDEX plans_by_bit ON plans (bit_id, id) WHERE bit_id IS NOT NULL;
CREATE INDEX plans_by_cut ON plans (cut_kind, id);
CREATE INDEX plans_by_external_id ON plans (external_id, id) WHERE external_id IS NOT NULL;
CREATE INDEX plans_by_router ON plans (router_id, id) WHERE router_id IS NOT NULL;
CREATE INDEX plans_by_verdict ON plans (verdict, id);
CREATE INDEX plans_by_wood ON plans (wood_id, id);
CREATE INDEX qualifications_by_person ON qualifications (person_id, id);
CREATE INDEX routers_by_external_id ON routers (external_id, id) WHERE external_id IS NOT NULL;
CREATE INDEX run_out_readings_by_bit ON run_out_readings (bit_id, id);
CREATE INDEX run_out_readings_by_bit_and_router ON run_out_readings (bit_id, router_id, id);
CREATE INDEX run_out_readings_by_router ON run_out_readings (router_id, id);
CREATE INDEX sharpenings_by_bit ON sharpenings (bit_id, id);
CREATE INDEX speed_trials_by_bit ON speed_trials (bit_id, id);
CREATE INDEX speed_trials_by_bit_and_router ON speed_trials (bit_id, router_id, id);
CREATE INDEX speed_trials_by_router ON speed_trials (router_id, id);
CREATE INDEX uses_by_bit ON uses (bit_id, id);
CREATE INDEX uses_by_bit_and_router ON uses (bit_id, router_id, id);
CREATE INDEX uses_by_person ON uses (person_id, id) WHERE person_id IS NOT NULL;
CREATE INDEX uses_by_router ON uses (router_id, id);

-- Whoever writes holds this row: one at a time, whichever process.
CREATE TABLE writing (
  is_one BOOLEAN PRIMARY KEY CHECK (is_one)
);
INSERT INTO writing VALUES (TRUE);

CREATE INDEX bits_by_terms ON bits USING GIN (terms) WITH (fastupdate = off);

CREATE FUNCTION give_status_index() RETURNS TRIGGER LANGUAGE plpgsql AS $$ BEGIN
  new.status_index := (SELECT coalesce(max(status_index), -1) + 1 FROM approvals);
  RETURN new;
END $$;
CREATE TRIGGER approvals_get_a_status_index BEFORE INSERT ON approvals FOR EACH ROW EXECUTE FUNCTION give_status_index();

CREATE FUNCTION refuse_change() RETURNS TRIGGER LANGUAGE plpgsql AS $$ BEGIN
  RAISE EXCEPTION 'events are append-only';
END $$;
CREATE TRIGGER events_are_not_changed BEFORE UPDATE ON events FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER events_are_not_removed BEFORE DELETE ON events FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER events_are_not_truncated BEFORE TRUNCATE ON events FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
