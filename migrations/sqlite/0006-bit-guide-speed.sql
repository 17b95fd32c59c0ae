-- A guide is held by the nominal speed, a hard limit by the fastest a mark may truly give: a bit is looked up by both.
ALTER TABLE bits ADD COLUMN guide_rpm REAL NOT NULL DEFAULT 0;

-- Made anew at the start, as the columns beside it are.
UPDATE bits SET words = '', facets = '';
