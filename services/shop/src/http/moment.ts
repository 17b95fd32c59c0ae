import { notValid } from "../problems/problem.ts";

/** Clocks of two machines differ by less than this. */
const CLOCK_SLACK_MS = 5 * 60 * 1000;

/** When something happened, as UTC: what was given, or now. Nothing has happened in the future. */
export function happenedAt(given: string | undefined, now: string, pointer: string): string {
  if (given === undefined) return now;
  const moment = new Date(given);
  if (moment.getTime() <= new Date(now).getTime() + CLOCK_SLACK_MS) return moment.toISOString();
  const accepted = "a time that is past; leave it out for now";
  throw notValid([{ in: "body", pointer, message: "That is in the future.", accepted }]);
}
