-- Whether a bit cuts at its end, so that it may be plunged; not known of the bits kept before.
ALTER TABLE bits ADD COLUMN is_end_cutting INTEGER CHECK (is_end_cutting IN (0, 1));
