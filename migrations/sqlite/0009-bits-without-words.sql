-- The service looks for bits without words at each start: it must not look through all that have them.
CREATE INDEX bits_without_words ON bits (number) WHERE words = '';
