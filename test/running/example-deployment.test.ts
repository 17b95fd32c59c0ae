import { join } from "node:path";
import { SETTINGS } from "@rimwise/shop";
import { expect, test } from "vitest";
import { newDatabase } from "../../services/shop/testing/behind-the-service.ts";
import { describeOnPostgresql } from "../../services/shop/testing/one-engine.ts";
import { PANEL_BIT } from "../contract/shop.ts";
import { builtService } from "./built-service.ts";
import {
  type Deployed,
  deployedServices,
  proxiedServices,
  secretsAskedFor,
  standInProxy,
} from "./deployment.ts";
import { ask, exited, freePort, ran, ready, run, temporaryFolder } from "./service-process.ts";

/** Where the service is in the example's containers, once it is built. */
const BUILT = "services/shop/dist/main.js";
const SECRETS = {
  POSTGRES_PASSWORD: "aPasswordOfTheTests",
  RIMWISE_SEALING_KEY: "5e".repeat(32),
  RIMWISE_FIRST_KEY: "a-first-manager's-key-for-the-tests-0123456789",
};

test("the example's deployment asks for the secrets that it uses, and knows every setting", () => {
  expect(secretsAskedFor()).toEqual(Object.keys(SECRETS));
  const services = deployedServices(SECRETS);
  const own = [...services].filter(([, { command }]) => command.includes(BUILT));
  expect(own.map(([name]) => `${name}:8080`)).toEqual(proxiedServices());
  for (const [, { command, environment }] of own) {
    expect(command).toEqual(["node", BUILT]);
    expect(Object.keys(SETTINGS.properties)).toEqual(expect.arrayContaining(Object.keys(environment)));
    const { username, password, host, pathname } = new URL(environment["RIMWISE_DATABASE"] ?? "");
    const { POSTGRES_USER, POSTGRES_PASSWORD, POSTGRES_DB } = services.get("database")?.environment ?? {};
    expect([username, password, host, pathname]).toEqual([
      POSTGRES_USER,
      POSTGRES_PASSWORD,
      "database:5432",
      `/${POSTGRES_DB}`,
    ]);
  }
});

describeOnPostgresql("the example's deployment, without its containers", () => {
  /** Starts a service by the command and the environment of the example; what its network names leads elsewhere here. */
  async function startAsWritten({ command, environment }: Deployed, database: string, folder: string) {
    const port = await freePort();
    const built = await builtService();
    const [, ...words] = command.map((word) => (word === BUILT ? built : word));
    const child = run(words, {
      ...environment,
      RIMWISE_DATABASE: database,
      RIMWISE_HOST: "127.0.0.1",
      RIMWISE_PORT: String(port),
      RIMWISE_SIGNING_KEYS: join(folder, `signing-keys-${port}.json`),
    });
    const url = `http://127.0.0.1:${port}`;
    await ready(url, child);
    return { ...child, url };
  }

  test("serves one shop from two processes, and goes on when either is killed", async () => {
    const folder = temporaryFolder();
    const database = newDatabase(folder);
    const services = deployedServices(SECRETS);
    const start = (name: string) => {
      const deployed = services.get(name);
      if (deployed === undefined) throw new Error(`the example has no ${name}`);
      return startAsWritten(deployed, database, folder);
    };
    const names = proxiedServices().map((address) => address.replace(/:\d+$/, ""));
    const running = await Promise.all(names.map(start));
    const url = await standInProxy(() => running.map((each) => each.url));
    const shop = { url, key: SECRETS.RIMWISE_FIRST_KEY };

    for (const { url: own } of running) {
      const [, program = "", ...words] = services.get("shop-1")?.healthcheck ?? [];
      expect(program).toBe("node");
      const check = await ran(
        words.map((word) => word.replace("http://127.0.0.1:8080", own)),
        {},
      );
      expect(check.code, "the container's own check finds it well").toBe(0);
    }

    let added = 0;
    const add = async () => {
      expect((await ask(shop, "/v1/bits", PANEL_BIT)).status).toBe(201);
      added += 1;
    };
    for (const [place, name] of names.entries()) {
      await add();
      const victim = running[place];
      if (victim === undefined) throw new Error(`${name} does not run`);
      victim.process.kill("SIGKILL");
      await exited(victim);
      for (let count = 0; count < 3; count += 1) await add();
      running[place] = await start(name);
    }
    expect((await ask(shop, "/v1/bits?limit=200")).body.data).toHaveLength(added);
    expect((await ask(shop, "/v1/events/checkpoints", {})).status).toBe(201);
    expect((await ask(shop, "/v1/events/verify", {})).body).toMatchObject({ isIntact: true, checkpoints: 1 });
    expect((await ask(shop, "/v1/keys")).body.data, "the first key was made once").toHaveLength(1);
  });
});
