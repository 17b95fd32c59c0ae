-- What lists of plans are narrowed by, taken out of what was asked for and what was computed.
ALTER TABLE plans ADD COLUMN bit_id TEXT AS (request ->> '$.bit.id') VIRTUAL;
ALTER TABLE plans ADD COLUMN router_id TEXT AS (request ->> '$.router.id') VIRTUAL;
ALTER TABLE plans ADD COLUMN wood_id TEXT AS (request ->> '$.woodId') VIRTUAL;
ALTER TABLE plans ADD COLUMN cut_kind TEXT AS (request ->> '$.cut.kind') VIRTUAL;
ALTER TABLE plans ADD COLUMN verdict TEXT AS (plan ->> '$.verdict') VIRTUAL;
CREATE INDEX plans_by_bit ON plans (bit_id, id) WHERE bit_id IS NOT NULL;
CREATE INDEX plans_by_router ON plans (router_id, id) WHERE router_id IS NOT NULL;
CREATE INDEX plans_by_wood ON plans (wood_id, id);
CREATE INDEX plans_by_cut ON plans (cut_kind, id);
CREATE INDEX plans_by_verdict ON plans (verdict, id);
