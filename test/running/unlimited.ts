/** Settings of a service that is asked as fast as a test or a benchmark can: silent, and never too busy. */
export const UNLIMITED = {
  RIMWISE_LOG_LEVEL: "silent",
  RIMWISE_RATE_LIMIT_PER_MINUTE: "1000000",
  RIMWISE_BUSY_AFTER_MS: "0",
};
