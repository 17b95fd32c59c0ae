-- Which people took a bit out and brought it back, beside for whom it was.
ALTER TABLE loans ADD COLUMN lent_by TEXT;
ALTER TABLE loans ADD COLUMN returned_by TEXT;
