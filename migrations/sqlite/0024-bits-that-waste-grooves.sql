-- How wide a groove a bit of the rack takes the wood out of before another finishes it; empty if it cannot, or is not at hand.
ALTER TABLE bits ADD COLUMN wastes_groove_mm REAL;
CREATE INDEX bits_by_groove_they_waste ON bits (wastes_groove_mm DESC, number) WHERE wastes_groove_mm IS NOT NULL;

-- Computed again at the start, as the columns beside it are.
UPDATE bits SET words = '', facets = '';
