-- What test pieces showed of a stored plan's setting.
ALTER TABLE plans ADD COLUMN corrections TEXT CHECK (corrections IS NULL OR json_valid(corrections));
