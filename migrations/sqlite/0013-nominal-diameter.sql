-- A sharpened bit is still called by the size it was bought in.
ALTER TABLE bits ADD COLUMN nominal_diameter_mm REAL CHECK (nominal_diameter_mm > 0);

-- Bits that were sharpened before: their size is in their first sharpening. Without words they are indexed at the next start.
UPDATE bits
SET nominal_diameter_mm = (
      SELECT json_extract(before, '$.form.diameterMm') FROM sharpenings
      WHERE bit_id = bits.id ORDER BY sharpened_at, id LIMIT 1
    ),
    words = ''
WHERE EXISTS (
  SELECT 1 FROM sharpenings
  WHERE bit_id = bits.id
    AND json_extract(before, '$.form.diameterMm') <> json_extract(after, '$.form.diameterMm')
);
