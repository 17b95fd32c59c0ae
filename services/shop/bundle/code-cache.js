import { once } from "node:events";
import { chmodSync, renameSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { pathToFileURL } from "node:url";

/*
 * Keeps the compiled code of the built service beside it: node code-cache.js MAIN DATABASE. It is kept once the service has
 * answered, so that it holds what a start and the first requests need.
 */
const [, , main, database] = process.argv;
const FIRST_KEY = "the-key-of-a-shop-that-is-thrown-away";
const ASK_EVERY_MS = 5;
/** Whoever may run the service may read its code: the service itself writes for its owner alone. */
const FOR_ALL_TO_READ = 0o644;

const port = await freePort();
const url = `http://127.0.0.1:${port}`;
process.env.RIMWISE_DATABASE = database;
process.env.RIMWISE_FIRST_KEY = FIRST_KEY;
process.env.RIMWISE_PORT = String(port);
process.env.RIMWISE_LOG_LEVEL = "silent";
process.argv = [process.execPath, main];

const { cacheFile, digest, script } = await import(pathToFileURL(main).href);
while (!(await answers("/livez"))) {
  // The service said why, and ended.
  if (process.exitCode !== undefined) process.exit();
  await new Promise((again) => setTimeout(again, ASK_EVERY_MS));
}
await answers("/v1/bits");
const fresh = `${cacheFile}-${process.pid}`;
writeFileSync(fresh, Buffer.concat([digest, script.createCachedData()]));
chmodSync(fresh, FOR_ALL_TO_READ);
renameSync(fresh, cacheFile);
process.kill(process.pid, "SIGTERM");

async function answers(path) {
  const headers = { authorization: `Bearer ${FIRST_KEY}` };
  const answer = await fetch(`${url}${path}`, { headers }).catch(() => undefined);
  await answer?.arrayBuffer();
  return answer?.ok === true;
}

async function freePort() {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port: free } = server.address();
  server.close();
  await once(server, "close");
  return free;
}
