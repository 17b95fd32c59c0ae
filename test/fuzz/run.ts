import { openDatabase } from "../../services/shop/testing/behind-the-service.ts";
import { made } from "../contract/crib.ts";
import { furnish } from "../contract/furnish.ts";
import { openShop } from "../contract/shop.ts";
import { randomFrom } from "./random.ts";
import { type FuzzRequest, requestFrom } from "./requests.ts";

/** A shop serves for so many requests: after them half its keys are revoked and its records are gone. */
export const REQUESTS_OF_A_SHOP = 1000;

export const FUZZ_SETTINGS = {
  RIMWISE_LOG_LEVEL: "silent",
  RIMWISE_RATE_LIMIT_PER_MINUTE: "1000000",
  RIMWISE_PUBLIC_RATE_LIMIT_PER_MINUTE: "1000000",
};

/** Refusals with 503 or 507 that the service means. */
const DELIBERATE = ["busy", "took-too-long", "closing", "disk-full", "database-read-only"];

/** What a seed and its place in it came to, when it is not what it should be. */
export type Failure = {
  readonly seed: number;
  readonly number: number;
  readonly asked: string;
  readonly why: string;
};

export type Run = { readonly failures: Failure[]; readonly statuses: ReadonlyMap<string, number> };

/** Sends the requests of one seed to a shop of its own. */
export async function fuzzOneShop(seed: number, count: number): Promise<Run> {
  const releases: (() => Promise<void>)[] = [];
  const shop = await openShop(
    FUZZ_SETTINGS,
    () => new Date(),
    (release) => void releases.push(release),
  );
  const furnished = await furnish((path, body, key) => made(shop, path, body, key));
  const database = await openDatabase(shop.file);
  const written = async () => {
    // The service's own checkpoints follow the clock, no request.
    const [row] = await database.rows("SELECT count(*) AS count FROM events WHERE by <> 'system'");
    return Number(row?.["count"]);
  };
  const failures: Failure[] = [];
  const statuses = new Map<string, number>();
  const random = randomFrom(seed);
  try {
    for (let number = 0; number < count; number += 1) {
      const request = requestFrom(random, furnished);
      const { operation, url, key, body, headers } = request;
      const before = await written();
      const answered = await shop
        .ask(operation.method, url, { key, headers, ...(body !== undefined && { body }) })
        .catch((error: unknown) => String(error));
      const grown = (await written()) - before;
      const why = typeof answered === "string" ? answered : faultOf(request, answered, grown);
      if (typeof answered !== "string") {
        const name = `${operation.id} ${answered.status}`;
        statuses.set(name, (statuses.get(name) ?? 0) + 1);
      }
      if (why !== undefined) failures.push({ seed, number, asked: shown(request), why });
    }
  } finally {
    await database.close();
    for (const release of releases) await release();
  }
  return { failures, statuses };
}

type Answered = Awaited<ReturnType<Awaited<ReturnType<typeof openShop>>["ask"]>>;

function faultOf(
  { operation }: FuzzRequest,
  { status, body, headers, text }: Answered,
  grown: number,
): string | undefined {
  if (status >= 500 && !DELIBERATE.includes(body?.code)) return `${status} ${text}`;
  const isDone = status >= 200 && status < 300;
  if (grown > 0 && (!isDone || operation.method === "GET"))
    return `${status}, and ${grown} events were written`;
  const isReplayed = headers["idempotent-replayed"] === "true";
  const mustWrite =
    status === 201 || status === 204 || (isDone && ["PATCH", "PUT"].includes(operation.method));
  return mustWrite && !isReplayed && grown === 0 ? `${status}, and no event was written` : undefined;
}

function shown({ operation, url, headers, body }: FuzzRequest): string {
  return `${operation.id} ${operation.method} ${url} ${JSON.stringify(headers)} ${JSON.stringify(body)}`.slice(
    0,
    600,
  );
}
