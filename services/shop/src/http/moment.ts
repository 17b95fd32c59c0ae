import { notValid, type Problem } from "../problems/problem.ts";

/** Clocks of two machines differ by less than this. */
const CLOCK_SLACK_MS = 5 * 60 * 1000;

const DAY_MS = 24 * 60 * 60 * 1000;

/** So many days after a moment, before it if they are negative; as UTC. */
export function daysAfter(moment: string, days: number): string {
  return new Date(new Date(moment).getTime() + days * DAY_MS).toISOString();
}

/** A moment in whole seconds since 1970, as tokens have it (RFC 7519, NumericDate). */
export function secondsOf(moment: string): number {
  return Math.floor(new Date(moment).getTime() / 1000);
}

/** The earliest that another machine's clock may have shown at a moment. */
export function clockSlackBefore(moment: string): string {
  return new Date(new Date(moment).getTime() - CLOCK_SLACK_MS).toISOString();
}

/** A time that is still to come, as UTC. */
export function momentAfter(now: string, given: string, pointer: string): string {
  const moment = new Date(given).toISOString();
  if (moment > now) return moment;
  throw refused(pointer, "That is past.", "a time that is still to come");
}

/** When something happened, as UTC: what was given, or now. Nothing has happened in the future. */
export function happenedAt(given: string | undefined, now: string, pointer: string): string {
  if (given === undefined) return now;
  const moment = new Date(given);
  if (moment.getTime() <= new Date(now).getTime() + CLOCK_SLACK_MS) return moment.toISOString();
  throw refused(pointer, "That is in the future.", "a time that is past; leave it out for now");
}

function refused(pointer: string, message: string, accepted: string): Problem {
  return notValid([{ in: "body", pointer, message, accepted }]);
}
