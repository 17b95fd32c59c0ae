-- A short number of the shop's own for every bit, to be written on it and its label. The database gives it: no decision rests on it, and no
-- event says it.
ALTER TABLE bits ADD COLUMN shop_number INTEGER;

UPDATE bits SET shop_number = numbered.place
FROM (SELECT id, row_number() OVER (ORDER BY number) AS place FROM bits) AS numbered
WHERE bits.id = numbered.id;

CREATE UNIQUE INDEX bits_by_shop_number ON bits (shop_number);

CREATE TRIGGER bits_get_a_shop_number AFTER INSERT ON bits BEGIN
  UPDATE bits SET shop_number = (SELECT coalesce(max(shop_number), 0) + 1 FROM bits) WHERE id = new.id;
END;
