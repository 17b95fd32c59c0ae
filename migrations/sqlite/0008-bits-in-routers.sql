-- What was learned about one bit in one router: an index with both, or all that is known of the router would be looked through.
CREATE INDEX speed_trials_by_bit_and_router ON speed_trials (bit_id, router_id, id);
CREATE INDEX run_out_readings_by_bit_and_router ON run_out_readings (bit_id, router_id, id);
CREATE INDEX uses_by_bit_and_router ON uses (bit_id, router_id, id);
