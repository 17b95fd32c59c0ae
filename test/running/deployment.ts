import { readFileSync } from "node:fs";
import { createServer, request } from "node:http";
import { onTestFinished } from "vitest";
import { parse } from "yaml";
import { freePort } from "./service-process.ts";

const FOLDER = new URL("../../services/example-deployment/", import.meta.url);

export type Deployed = {
  readonly command: readonly string[];
  readonly environment: Readonly<Record<string, string>>;
  readonly healthcheck: readonly string[];
};

/** A variable as Compose files name one that must be given. */
const VARIABLE = /\$\{(\w+):\?\}/g;

/** The services of the example with what the secrets' file would give. */
export function deployedServices(secrets: Readonly<Record<string, string>>): ReadonlyMap<string, Deployed> {
  const text = readFileSync(new URL("compose.yaml", FOLDER), "utf8").replaceAll(VARIABLE, (_, name) => {
    const value = secrets[name];
    if (value === undefined) throw new Error(`the example needs ${name}, which its first lines do not name`);
    return value;
  });
  const { services }: { services: Record<string, Partial<Deployed> & { healthcheck?: { test: string[] } }> } =
    parse(text, { merge: true });
  return new Map(
    Object.entries(services).map(([name, { command = [], environment = {}, healthcheck }]) => [
      name,
      { command, environment, healthcheck: healthcheck?.test ?? [] },
    ]),
  );
}

/** The secrets that the example's first lines say are to be written, with how. */
export function secretsAskedFor(): string[] {
  const text = readFileSync(new URL("compose.yaml", FOLDER), "utf8");
  return [...text.matchAll(/^# +(\w+)=…/gm)].map(([, name = ""]) => name);
}

/** The services that the example's proxy leads to, as `name:port`. */
export function proxiedServices(): string[] {
  const text = readFileSync(new URL("proxy.conf", FOLDER), "utf8");
  return [...text.matchAll(/^ +server ([\w.-]+:\d+) /gm)].map(([, address = ""]) => address);
}

/**
 * A stand-in for the example's proxy, as its file says: in turn to each service, and what one did not get, or refused with 503, to the
 * next. Gives its URL.
 */
export async function standInProxy(targets: () => readonly string[]): Promise<string> {
  const port = await freePort();
  let turn = 0;
  const server = createServer((asked, answer) => {
    const parts: Buffer[] = [];
    asked.on("data", (part: Buffer) => parts.push(part));
    asked.on("end", () => {
      turn += 1;
      tryNext(turn, targets().length);
    });

    function tryNext(place: number, left: number): void {
      const now = targets();
      const target = now[place % now.length] ?? "";
      const passed = request(
        target + (asked.url ?? ""),
        { method: asked.method, headers: asked.headers },
        (given) => {
          if (given.statusCode === 503 && left > 1) {
            given.resume();
            return tryNext(place + 1, left - 1);
          }
          answer.writeHead(given.statusCode ?? 502, given.headers);
          given.pipe(answer);
        },
      );
      passed.on("error", () => {
        if (left > 1) return tryNext(place + 1, left - 1);
        if (!answer.headersSent) answer.writeHead(502);
        answer.end();
      });
      passed.end(Buffer.concat(parts));
    }
  }).listen(port, "127.0.0.1");
  onTestFinished(() => void server.close());
  return `http://127.0.0.1:${port}`;
}
