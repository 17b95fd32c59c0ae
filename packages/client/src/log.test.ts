import { expect, it, onTestFinished } from "vitest";
import { answering, json, problem, READ, send } from "../testing/scripted-service.ts";
import type { LogEntry } from "./log.ts";

it.each([
  ["a success", json(200, { id: "b" }, { "x-request-id": "r9" }), 200, "r9"],
  ["a refusal", problem(404, "not-found", { "x-request-id": "r9" }), 404, "r9"],
  ["a redirect", new Response(null, { status: 307, headers: { location: "/x" } }), 307, undefined],
  [
    "a guest network's page",
    new Response("<p>Hello", { headers: { "content-type": "text/html" } }),
    200,
    undefined,
  ],
])("the log has the status and the request id of %s", async (_what, answer, status, id) => {
  const { fetch, requests } = answering(answer);
  const entries: LogEntry[] = [];
  const log = (entry: LogEntry) => void entries.push(entry);
  const failed: unknown = await send(fetch, READ, { retries: 0 }, { log }).then(
    () => undefined,
    (error: unknown) => error,
  );
  const requestId = id ?? requests[0]?.headers.get("x-request-id");
  expect(entries).toMatchObject([{ status, requestId }]);
  if (failed !== undefined) expect(failed).toMatchObject({ status, headers: answer.headers });
});

it("the log has the request id of what nobody answered, and no status", async () => {
  const { fetch, requests } = answering(new TypeError("fetch failed"));
  const entries: LogEntry[] = [];
  await expect(
    send(fetch, READ, { retries: 0 }, { log: (entry) => void entries.push(entry) }),
  ).rejects.toMatchObject({ status: undefined, headers: undefined });
  expect(entries[0]).toMatchObject({ requestId: requests[0]?.headers.get("x-request-id") });
  expect(entries[0]).not.toHaveProperty("status");
});

it("a log that fails later breaks nothing", async () => {
  const unheard: unknown[] = [];
  const hear = (reason: unknown) => void unheard.push(reason);
  process.on("unhandledRejection", hear);
  onTestFinished(() => void process.off("unhandledRejection", hear));
  const { fetch } = answering(json(200, { id: "bit_1" }));
  const log = async () => {
    throw new Error("the disk is full");
  };
  expect(await send(fetch, READ, {}, { log })).toEqual({ id: "bit_1" });
  await new Promise((resolve) => setTimeout(resolve, 5));
  expect(unheard).toEqual([]);
});

const SINCE = "@1801353600";
const UNTIL = "Sat, 31 Jul 2027 00:00:00 GMT";

it.each([
  [
    {
      deprecation: SINCE,
      sunset: UNTIL,
      link: '</v1/bits?cursor=2>; rel="next", </docs/bits>; rel="deprecation"',
    },
    `Deprecated from Sun, 31 Jan 2027 00:00:00 GMT; may be gone after ${UNTIL}; see /docs/bits`,
  ],
  [{ deprecation: SINCE }, "Deprecated from Sun, 31 Jan 2027 00:00:00 GMT"],
  [{ sunset: UNTIL, link: '</docs>; rel="help"' }, undefined],
  [{ deprecation: "@soon" }, undefined],
])("the log warns of an operation that is going away: %o", async (headers, warning) => {
  const entries: LogEntry[] = [];
  const log = (entry: LogEntry) => void entries.push(entry);
  await send(answering(json(200, { id: "b" }, headers)).fetch, READ, {}, { log });
  expect(entries.map((entry) => entry.warning)).toEqual([warning]);
});
