import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type App, buildApp, grantFirstKey, openShopStore, readConfig } from "@rimwise/shop";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { freeSchema, newSchema, serverUnderTest } from "../../services/shop/testing/database-under-test.ts";
import { injected } from "../../services/shop/testing/injected.ts";
import { UNLIMITED } from "../running/unlimited.ts";
import type { AnswerBody } from "./acts/act.ts";
import { type FaultyStore, faulty, type WriteFault } from "./faulty-store.ts";
import { copyOf, type Model } from "./model.ts";
import { furnish, type Scene } from "./scene.ts";

export const START_MS = Date.UTC(2026, 2, 2, 8);

export type Request = {
  readonly method: "GET" | "POST" | "PATCH";
  readonly url: string;
  readonly key?: string;
  readonly body?: object;
  readonly headers?: Readonly<Record<string, string>>;
};

/** `code` is `done` for a success, else that of its problem. */
export type Answer = {
  readonly status: number;
  readonly code: string;
  readonly body: AnswerBody;
  readonly isReplayed: boolean;
};

/** The service on a database of its own, whose clock, faults and restarts are the simulation's. */
export type World = {
  readonly scene: Scene;
  readonly model: Model;
  readonly managerKey: string;
  readonly database: string;
  /** The signed sheets that somebody took, by the approval's id. */
  readonly sheets: Map<string, string>;
  readonly ask: (request: Request) => Promise<Answer>;
  readonly setClock: (nowMs: number) => void;
  readonly arm: (fault: WriteFault | undefined) => void;
  /** Ends the process and starts another one on what is on the disk. */
  readonly restart: (between?: () => Promise<void>) => Promise<void>;
  readonly end: () => Promise<void>;
};

type Ready = {
  readonly folder: string;
  readonly scene: Scene;
  readonly model: Model;
  readonly managerKey: string;
};

let ready: Ready | undefined;

/** A new shop in which everything is ready. On SQLite it is furnished once, and copied. */
export async function openWorld(): Promise<World> {
  const server = serverUnderTest();
  const folder = mkdtempSync(join(tmpdir(), "rimwise-simulation-"));
  const remove = () => rmSync(folder, { recursive: true, force: true });
  if (server !== undefined) {
    const database = newSchema(server, "pool_size=3");
    const furnished = await furnishedIn(database, folder);
    return open(database, { folder, ...furnished }, async () => {
      await freeSchema(database);
      remove();
    });
  }
  ready ??= await prepared();
  for (const name of ["shop.sqlite", "signing-keys.json"])
    copyFileSync(join(ready.folder, name), join(folder, name));
  return open(join(folder, "shop.sqlite"), { ...ready, folder, model: copyOf(ready.model) }, async () =>
    remove(),
  );
}

async function prepared(): Promise<Ready> {
  const folder = mkdtempSync(join(tmpdir(), "rimwise-simulation-"));
  process.once("exit", () => rmSync(folder, { recursive: true, force: true }));
  return { folder, ...(await furnishedIn(join(folder, "shop.sqlite"), folder)) };
}

async function furnishedIn(database: string, folder: string) {
  const service = await serve(database, folder, () => START_MS);
  const { managerKey } = service;
  if (managerKey === undefined) throw new Error("the shop is not new");
  const post = async (url: string, body: object, key = managerKey) => {
    const answer = await service.ask({ method: "POST", url, body, key });
    if (answer.code !== "done") throw new Error(`${url}: ${JSON.stringify(answer.body)}`);
    return answer.body;
  };
  const made = await furnish(post, START_MS);
  await service.close();
  return { ...made, managerKey };
}

async function open(
  database: string,
  { folder, scene, model, managerKey }: Ready,
  remove: () => Promise<void>,
): Promise<World> {
  let nowMs = START_MS;
  const now = () => nowMs;
  let service = await serve(database, folder, now);
  return {
    ...{ scene, model, managerKey, database, sheets: new Map() },
    ask: (request) => service.ask(request),
    setClock: (to) => {
      nowMs = to;
    },
    arm: (fault) => service.faults.arm(fault),
    restart: async (between) => {
      await service.close();
      await between?.();
      service = await serve(database, folder, now);
    },
    end: async () => {
      await service.close();
      await remove();
    },
  };
}

type Service = {
  readonly managerKey: string | undefined;
  readonly faults: FaultyStore;
  readonly ask: World["ask"];
  readonly close: () => Promise<void>;
};

async function serve(database: string, folder: string, now: () => number): Promise<Service> {
  const config = readConfig({
    RIMWISE_DATABASE: database,
    RIMWISE_SIGNING_KEYS: join(folder, "signing-keys.json"),
    ...UNLIMITED,
  });
  const store = await openShopStore(database);
  const managerKey = await grantFirstKey(store, undefined);
  const faults = faulty(store);
  const { app } = await buildApp({ config, store: faults.store, now: () => new Date(now()) });
  await app.ready();
  return {
    managerKey,
    faults,
    ask: (request) => askOf(app, request),
    close: async () => {
      await app.close();
      await store.close();
    },
  };
}

async function askOf(app: App, { method, url, key, body, headers }: Request): Promise<Answer> {
  const response = await injected(app, {
    ...{ method, url },
    headers: { ...(key !== undefined && { authorization: `Bearer ${key}` }), ...headers },
    ...(body !== undefined && { payload: body }),
  });
  const { statusCode: status, body: text } = response;
  const isJson = /json/.test(String(response.headers["content-type"]));
  const read = isJson ? JSON.parse(text) : text;
  return {
    status,
    code: status < 300 ? "done" : String(read.code),
    body: read,
    isReplayed: response.headers["idempotent-replayed"] === "true",
  };
}

/** Makes every statement that writes an event fail while something is done. */
export async function withFailingStatement<Result>(
  { database }: World,
  act: () => Promise<Result>,
): Promise<Result> {
  const run = (sql: string) => behindTheService({ file: database }, (door) => door.run(sql));
  const isSqlite = serverUnderTest() === undefined;
  await run(
    isSqlite
      ? "CREATE TRIGGER breaks BEFORE INSERT ON events BEGIN SELECT RAISE(ABORT, 'it breaks'); END"
      : `CREATE FUNCTION breaks() RETURNS trigger LANGUAGE plpgsql AS 'BEGIN RAISE EXCEPTION ''it breaks''; END';
         CREATE TRIGGER breaks BEFORE INSERT ON events FOR EACH ROW EXECUTE FUNCTION breaks()`,
  );
  try {
    return await act();
  } finally {
    await run(isSqlite ? "DROP TRIGGER breaks" : "DROP TRIGGER breaks ON events; DROP FUNCTION breaks()");
  }
}
