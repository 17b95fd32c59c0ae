-- Every approval has a place of its own in the status list. The database gives it: no decision rests on it, and no event says it.
ALTER TABLE approvals ADD COLUMN status_index INTEGER;

UPDATE approvals SET status_index = numbered.place
FROM (SELECT id, row_number() OVER (ORDER BY id) - 1 AS place FROM approvals) AS numbered
WHERE approvals.id = numbered.id;

CREATE UNIQUE INDEX approvals_by_status_index ON approvals (status_index);

CREATE TRIGGER approvals_get_a_status_index AFTER INSERT ON approvals BEGIN
  UPDATE approvals SET status_index = (SELECT coalesce(max(status_index), -1) + 1 FROM approvals) WHERE id = new.id;
END;

-- What ended is read page by page, and ends at the same moment by the hundred: the place tells them apart.
DROP INDEX approvals_ended;
CREATE INDEX approvals_ended ON approvals (valid_until, status_index) WHERE state IN ('lapsed', 'withdrawn', 'replaced');
DROP INDEX approvals_cut_short;
CREATE INDEX approvals_cut_short ON approvals (sheets_until, status_index) WHERE sheets_until IS NOT NULL;
