-- What other programs call records, so that they can tie their own to them.
ALTER TABLE bits ADD COLUMN external_id TEXT;
ALTER TABLE routers ADD COLUMN external_id TEXT;
ALTER TABLE people ADD COLUMN external_id TEXT;
ALTER TABLE plans ADD COLUMN external_id TEXT;
CREATE INDEX bits_by_external_id ON bits (external_id, id) WHERE external_id IS NOT NULL;
CREATE INDEX routers_by_external_id ON routers (external_id, id) WHERE external_id IS NOT NULL;
CREATE INDEX people_by_external_id ON people (external_id, id) WHERE external_id IS NOT NULL;
CREATE INDEX plans_by_external_id ON plans (external_id, id) WHERE external_id IS NOT NULL;
