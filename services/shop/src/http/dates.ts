import { Ajv } from "ajv";
import formats from "ajv-formats";
import { lazily } from "./lazily.ts";

/** No tool, key or course of a shop is of another year: what says so is mistyped, or made to break a clock. */
const FIRST_YEAR = 1970;
const LAST_YEAR = 2999;

const usual = lazily(() => {
  const ajv = formats.default(new Ajv());
  return {
    isDateTime: ajv.compile<string>({ type: "string", format: "date-time" }),
    isDate: ajv.compile<string>({ type: "string", format: "date" }),
  };
});

/** A date-time (RFC 3339) that JavaScript's clock has too, of a usual year in UTC: no leap second. */
export function isMoment(text: string): boolean {
  const time = new Date(text);
  return usual().isDateTime(text) && !Number.isNaN(time.getTime()) && isUsualYear(time.getUTCFullYear());
}

/** A date (RFC 3339) of a usual year. */
export function isDay(text: string): boolean {
  return usual().isDate(text) && isUsualYear(Number(text.slice(0, 4)));
}

function isUsualYear(year: number): boolean {
  return year >= FIRST_YEAR && year <= LAST_YEAR;
}
