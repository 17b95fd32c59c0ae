-- Jobs as they were asked for and computed, and the bits that are kept for their days.
CREATE TABLE jobs (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  external_id TEXT,
  notes TEXT,
  person_id TEXT,
  course_id TEXT,
  starts_on TEXT,
  wanted_on TEXT,
  wood_id TEXT NOT NULL,
  machines JSON NOT NULL,
  set_in TEXT,
  policy JSON,
  parts JSON NOT NULL,
  state TEXT NOT NULL,
  work JSON NOT NULL,
  made JSON NOT NULL
);

CREATE INDEX jobs_by_state ON jobs (state, id);
CREATE INDEX jobs_by_person ON jobs (person_id, id) WHERE person_id IS NOT NULL;
CREATE INDEX jobs_by_course ON jobs (course_id, id) WHERE course_id IS NOT NULL;
CREATE INDEX jobs_by_external_id ON jobs (external_id, id) WHERE external_id IS NOT NULL;

CREATE TABLE reservations (
  id TEXT PRIMARY KEY,
  version BIGINT NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  bit_id TEXT NOT NULL,
  job_id TEXT NOT NULL,
  person_id TEXT,
  "from" TEXT NOT NULL,
  until TEXT NOT NULL,
  state TEXT NOT NULL
);

CREATE INDEX reservations_by_bit ON reservations (bit_id, id);
CREATE INDEX reservations_kept ON reservations (bit_id, state);
CREATE INDEX reservations_by_job ON reservations (job_id, id);
CREATE INDEX reservations_by_state ON reservations (state, id);

ALTER TABLE loans ADD COLUMN job_id TEXT;
