-- The index of words knows in which blocks of numbers a bit is, of 128 numbers to 4,194,304, so that what it finds can be read in order of
-- the numbers, a page at a time. A block is known by its place among those of its size, and the size.
CREATE FUNCTION blocks_of(number BIGINT) RETURNS BIGINT[] LANGUAGE SQL IMMUTABLE PARALLEL SAFE RETURN ARRAY[
  number >> 7 << 3,
  number >> 10 << 3 | 1,
  number >> 13 << 3 | 2,
  number >> 16 << 3 | 3,
  number >> 19 << 3 | 4,
  number >> 22 << 3 | 5
];

-- Blocks first: so the index leaves the others alone as soon as a window of numbers ends.
CREATE INDEX bits_by_blocks_and_terms ON bits USING GIN (blocks_of(number), terms) WITH (fastupdate = off);
DROP INDEX bits_by_terms;
