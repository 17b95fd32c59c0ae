import Fastify from "fastify";
import { expect, onTestFinished, test } from "vitest";
import type { App } from "./app-type.ts";
import { announceDeprecations } from "./deprecation.ts";

test("an operation that is going away says since when, until when and what to use instead, and no other does", async () => {
  const app: App = Fastify();
  onTestFinished(() => app.close());
  announceDeprecations(app);
  const deprecated = { since: "2027-01-31", goneAfter: "2027-07-31", instead: "/docs/bits" };
  app.get("/old", { config: { deprecated } }, async () => ({}));
  app.get("/fails", { config: { deprecated: { since: "2027-01-31", instead: "/docs" } } }, async () => {
    throw new Error("no");
  });
  app.get("/new", async () => ({}));
  const headersOf = async (url: string) => {
    const { deprecation, sunset, link } = (await app.inject({ url })).headers;
    return { deprecation, sunset, link };
  };
  // RFC 9745: an Item of structured fields, a date as seconds since 1970. RFC 8594: an HTTP date.
  expect(await headersOf("/old")).toEqual({
    deprecation: "@1801353600",
    sunset: "Sat, 31 Jul 2027 00:00:00 GMT",
    link: '</docs/bits>; rel="deprecation"',
  });
  expect(await headersOf("/fails")).toEqual({
    deprecation: "@1801353600",
    sunset: undefined,
    link: '</docs>; rel="deprecation"',
  });
  expect(await headersOf("/new")).toEqual({ deprecation: undefined, sunset: undefined, link: undefined });
});
