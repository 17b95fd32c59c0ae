import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type App, buildApp, grantFirstKey, openShopStore, readConfig } from "@rimwise/shop";
import { afterAll, beforeAll, onTestFinished } from "vitest";
import { freeSchema, newSchema, serverUnderTest } from "../../services/shop/testing/database-under-test.ts";
import { injected } from "../../services/shop/testing/injected.ts";
import { documentedAnswers } from "./documented.ts";

type Method = "GET" | "HEAD" | "POST" | "PUT" | "PATCH" | "DELETE" | "OPTIONS";
type Ask = {
  /** An object is sent as JSON, text as it is. */
  body?: object | string;
  headers?: Record<string, string>;
  /** Another key than the manager's, or none. */
  key?: string | null;
};

export type Answer = {
  status: number;
  headers: Record<string, string | undefined>;
  text: string;
  // biome-ignore lint/suspicious/noExplicitAny: checked against its OpenAPI schema before anybody sees it.
  body: any;
};

export type Shop = {
  app: App;
  managerKey: string;
  /** The database: a file, or the URL of a schema on the server under test. */
  file: string;
  /** The file of what opens its signing keys. */
  signingKeys: string;
  log: () => string;
  ask: (method: Method, url: string, ask?: Ask) => Promise<Answer>;
};

/**
 * A shop of its own: a real file, real migrations, no port. Every answer is checked against the API description. It is closed
 * after the test, or when `keptFor` (vitest's afterAll) says.
 */
export async function openShop(
  settings: Record<string, string> = {},
  now: () => Date = () => new Date(),
  keptFor?: (release: () => Promise<void>) => void,
  clientPackage?: string,
): Promise<Shop> {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-"));
  const server = serverUnderTest();
  const own = server === undefined ? join(folder, "shop.sqlite") : newSchema(server);
  const file = settings["RIMWISE_DATABASE"] ?? own;
  const lines: string[] = [];
  const config = readConfig({
    RIMWISE_DATABASE: file,
    ...(server !== undefined && { RIMWISE_SIGNING_KEYS: join(folder, "signing-keys.json") }),
    RIMWISE_LOG_LEVEL: "trace",
    RIMWISE_RATE_LIMIT_PER_MINUTE: "100000",
    // A loaded test machine is late; a test about lateness says so itself.
    RIMWISE_BUSY_AFTER_MS: "0",
    ...settings,
  });
  if (server === undefined && file === own) writeFileSync(own, await emptyDatabase());
  const store = await openShopStore(config.database);
  const managerKey = (await grantFirstKey(store, config.firstKey)) ?? String(config.firstKey);
  const { app, document } = await buildApp({
    config,
    store,
    now,
    logStream: { write: (line) => void lines.push(line) },
    ...(clientPackage !== undefined && { clientPackage }),
  });
  await app.ready();
  const release = async () => {
    await checkEvents();
    await app.close();
    await store.close();
    if (server !== undefined && file === own) await freeSchema(own);
    rmSync(folder, { recursive: true });
  };
  if (keptFor === undefined) onTestFinished(release);
  else keptFor(release);
  const check = documentedAnswers(document);

  async function ask(method: Method, url: string, { body, headers = {}, key = managerKey }: Ask = {}) {
    const response = await injected(app, {
      method,
      url,
      headers: {
        ...(key !== null && { authorization: `Bearer ${key}` }),
        ...(typeof body === "string" && { "content-type": "application/json" }),
        ...headers,
      },
      ...(body !== undefined && { payload: body }),
    });
    const contentType = textHeader(response.headers["content-type"]);
    const isJson = /[/+]json\b/.test(contentType ?? "");
    const answer: Answer = {
      status: response.statusCode,
      headers: Object.fromEntries(
        Object.entries(response.headers).map(([name, value]) => [name, textHeader(value)]),
      ),
      text: response.body,
      body: isJson && response.body !== "" ? JSON.parse(response.body) : undefined,
    };
    const [path = ""] = url.split("?", 1);
    check({ method, path, status: answer.status, headers: answer.headers, body: answer.body });
    return answer;
  }

  /** Whatever a test did, its events are of the documented types, each with the data of its type. */
  async function checkEvents() {
    const authorization = `Bearer ${managerKey}`;
    // A test may have closed the shop, or ended the key.
    const events = await app
      .inject({ url: "/v1/events?limit=200", headers: { authorization } })
      .catch(() => undefined);
    if (events?.statusCode !== 200) return;
    check({ method: "GET", path: "/v1/events", status: 200, headers: JSON_BODY, body: events.json() });
  }

  return { app, managerKey, file, signingKeys: config.signingKeys, log: () => lines.join(""), ask };
}

/** One shop for all tests of a file that leave nothing behind which another of them would meet. */
export function sharedShop(): Pick<Shop, "ask"> {
  let opened: Promise<Shop>;
  beforeAll(async () => {
    opened = openShop({}, undefined, afterAll);
    await opened;
  });
  return { ask: async (...asked) => (await opened).ask(...asked) };
}

const JSON_BODY = { "content-type": "application/json" };

let empty: Promise<Buffer> | undefined;

/** A database that every migration has been applied to, made once for all shops of a process: copied, it is theirs. */
function emptyDatabase(): Promise<Buffer> {
  empty ??= migrated();
  return empty;
}

async function migrated(): Promise<Buffer> {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-"));
  try {
    const file = join(folder, "empty.sqlite");
    await (await openShopStore(file)).close();
    return readFileSync(file);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** A raised-panel bit of the invented shop. */
export const PANEL_BIT = {
  name: "Raised panel, 89 mm",
  notes: "Upper drawer.",
  form: { kind: "panel-raising", diameterMm: 88.9, pilotDiameterMm: 22, profileHeightMm: 12, face: "cove" },
  shankDiameterMm: 12.7,
  wings: 2,
  massG: 340,
  markedMaxRpm: 12000,
};

/** A variable-speed router of the invented shop. */
export const TABLE_ROUTER = {
  name: "Table router",
  minRpm: 10000,
  maxRpm: 22000,
  dial: {
    marks: { first: 1, last: 6 },
    steps: 2,
    readings: [
      { mark: 1, rpm: 9800 },
      { mark: 6, rpm: 21600 },
    ],
  },
  inputPowerW: 2200,
  colletDiametersMm: [6.35, 12.7],
};

function textHeader(value: number | string | string[] | undefined): string | undefined {
  return value === undefined ? undefined : String(value);
}
