import { existsSync } from "node:fs";
import { createServer } from "node:net";
import { type Browser, chromium } from "playwright-core";
import { openShop, type Shop } from "../contract/shop.ts";

/** Debian's Chromium; another may be named. */
const CHROMIUM = process.env["CHROMIUM_PATH"] ?? "/usr/bin/chromium";

/** A page test needs a browser: without one a person's run skips it, and continuous integration fails. */
export const hasBrowser = existsSync(CHROMIUM) || process.env["CI"] !== undefined;

/** What keeps Chromium from calling home, and lets it run as root. */
const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

export function launchBrowser(...more: string[]): Promise<Browser> {
  if (!existsSync(CHROMIUM)) {
    throw new Error(
      `There is no Chromium at ${CHROMIUM}. Install Debian's package chromium, or name one in CHROMIUM_PATH.`,
    );
  }
  return chromium.launch({ executablePath: CHROMIUM, args: [...FLAGS, ...more] });
}

/** A shop that listens, and knows at which address. */
export async function openListeningShop(
  keptFor: (release: () => Promise<void>) => void,
): Promise<{ shop: Shop; url: string }> {
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  const shop = await openShop({ RIMWISE_PUBLIC_URL: url }, undefined, keptFor);
  await shop.app.listen({ host: "127.0.0.1", port });
  return { shop, url };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", reject);
    server.listen(0, "127.0.0.1", () => {
      const address = server.address();
      server.close(() =>
        typeof address === "object" && address ? resolve(address.port) : reject(new Error("no port")),
      );
    });
  });
}
