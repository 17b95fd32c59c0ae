-- What is in force at a moment is found by its end: what has expired is never read.
DROP INDEX approvals_in_force;
CREATE INDEX approvals_in_force ON approvals (course_id, bit_id, router_id, valid_until) WHERE state = 'issued';
CREATE INDEX approvals_by_pair ON approvals (course_id, bit_id, router_id, id);

-- What the course asked for when a setting was drafted: what is loosened later does not loosen the setting.
ALTER TABLE approvals ADD COLUMN is_two_person INTEGER NOT NULL DEFAULT 0 CHECK (is_two_person IN (0, 1));
ALTER TABLE approvals ADD COLUMN requirements TEXT NOT NULL DEFAULT '{}' CHECK (json_valid(requirements));
UPDATE approvals SET
  is_two_person = COALESCE((SELECT is_two_person FROM courses WHERE courses.id = course_id), 0),
  requirements = COALESCE((SELECT requirements FROM courses WHERE courses.id = course_id), '{}');

-- Why somebody used a bit that was not on loan to them.
ALTER TABLE uses ADD COLUMN without_loan_because TEXT;

-- What is held, and how much of it by whom, is asked whenever somebody holds something.
CREATE INDEX bits_held ON bits (id) WHERE state = 'held';
CREATE INDEX collets_held ON collets (id) WHERE condition = 'held';

-- The course that a qualification is for; of those without one every course takes account.
ALTER TABLE qualifications ADD COLUMN course_id TEXT;
