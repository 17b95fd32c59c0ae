-- A reading that somebody stands by although it does not fit the router.
ALTER TABLE dial_readings ADD COLUMN is_confirmed INTEGER CHECK (is_confirmed IN (0, 1));
