-- A list of the settings in one state costs what is on its page, however many have ended. Where the course or the bit is
-- asked for beside the state, an index with both must win over the one with the state alone.
CREATE INDEX approvals_by_state ON approvals (state, id);
CREATE INDEX approvals_by_course_and_state ON approvals (course_id, state, id);
CREATE INDEX approvals_by_bit_and_state ON approvals (bit_id, state, id);
