-- A list of the settings in one state costs what is on its page, however many have ended.
CREATE INDEX approvals_by_state ON approvals (state, id);
