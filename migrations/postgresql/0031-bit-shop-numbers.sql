-- A short number of the shop's own for every bit, to be written on it and its label. The database gives it: no decision rests on it, and no
-- event says it.
ALTER TABLE bits ADD COLUMN shop_number BIGINT;

UPDATE bits SET shop_number = numbered.place
FROM (SELECT id, row_number() OVER (ORDER BY number) AS place FROM bits) AS numbered
WHERE bits.id = numbered.id;

CREATE UNIQUE INDEX bits_by_shop_number ON bits (shop_number);

CREATE FUNCTION give_shop_number() RETURNS TRIGGER LANGUAGE plpgsql AS $$ BEGIN
  new.shop_number := (SELECT coalesce(max(shop_number), 0) + 1 FROM bits);
  RETURN new;
END $$;
CREATE TRIGGER bits_get_a_shop_number BEFORE INSERT ON bits FOR EACH ROW EXECUTE FUNCTION give_shop_number();
