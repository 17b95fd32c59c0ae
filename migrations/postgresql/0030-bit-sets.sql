-- Bits that belong together, such as a cope and its stick, have the name of their set in common.
ALTER TABLE bits ADD COLUMN set_name TEXT;
CREATE INDEX bits_by_set ON bits (set_name, id) WHERE set_name IS NOT NULL;
