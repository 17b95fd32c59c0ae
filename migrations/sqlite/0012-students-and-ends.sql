-- Students are people of a role of their own. Which roles there are is the schema's to say, so that the next one needs no
-- rebuilt table.
CREATE TABLE new_people (
  id TEXT PRIMARY KEY,
  version INTEGER NOT NULL CHECK (version >= 1),
  created_at TEXT NOT NULL,
  updated_at TEXT NOT NULL,
  name TEXT NOT NULL,
  role TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('active', 'left')),
  notes TEXT
) STRICT;

INSERT INTO new_people (id, version, created_at, updated_at, name, role, state, notes)
  SELECT id, version, created_at, updated_at, name, role, state, notes FROM people;
DROP TABLE people;
ALTER TABLE new_people RENAME TO people;

CREATE INDEX people_by_role ON people (role, state, id);

-- Whether members see who has which bit.
ALTER TABLE shop_policies ADD COLUMN are_loans_shown INTEGER CHECK (are_loans_shown IN (0, 1));

-- Until when the sheets hold that were signed before an approval was cut short: so long the status list names it.
ALTER TABLE approvals ADD COLUMN sheets_until TEXT;

CREATE INDEX approvals_cut_short ON approvals (sheets_until) WHERE sheets_until IS NOT NULL;

-- Damage that was repaired with a sharpening.
ALTER TABLE sharpenings ADD COLUMN repaired TEXT CHECK (json_valid(repaired));
