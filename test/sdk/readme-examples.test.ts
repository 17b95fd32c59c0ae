import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { made } from "../contract/crib.ts";
import { furnish } from "../contract/furnish.ts";
import { openShop } from "../contract/shop.ts";
import { CLIENT } from "./packed.ts";
import { folderWithClient, start } from "./programs.ts";

/** What each example of the README prints, by its heading: the first letters of every line. */
const PRINTED: Readonly<Record<string, RegExp>> = {
  "Connect and ask for a plan": /^run(-with-care)? [\d.]+ \[/,
  "Keep a record, and change it": /^58\n$/,
  "Read it again only if it has changed": /^58\n$/,
  "Read a list": /^Straight, 1\/2 in\n\d+ null \d+\n$/,
  "Send and save files": /^1 <svg[\s\S]*\n\d{3,}\n$/,
  "Handle a refusal": /^\/shankDiameterMm .+\n$/,
  "Branch on codes": /^[A-Z].+\.\n/,
  "Set how calls are made": /^manager 200 [\w.-]+\n\d+\.\d+\.\d+\n$/,
  "Follow what happens": /^\w+\.[\w-]+ \d{4}-.*Z\n$/,
  "Rely on approved settings": /^true \[\] beside\n$/,
};

test("every example of the client's README runs against the service and prints what it should", async () => {
  const { folder, remove } = folderWithClient();
  const shop = await openShop();
  const { keys } = await furnish((path, body, key) => made(shop, path, body, key));
  const baseUrl = await shop.app.listen({ host: "127.0.0.1", port: 0 });
  const readme = readFileSync(join(CLIENT, "README.md"), "utf8");
  const sections = [...readme.matchAll(/^## (.+)\n(?:(?!^## )[\s\S])*?^```ts\n([\s\S]*?)^```/gm)];
  expect(sections.map(([, heading]) => heading)).toEqual(Object.keys(PRINTED));
  expect(readme.match(/^```ts$/gm)).toHaveLength(sections.length);
  const code = sections.map(([, heading, block]) => `console.log("## ${heading}");\n${block}`).join("\n");

  const { ended } = start({ folder, code }, { RIMWISE_URL: baseUrl, RIMWISE_KEY: keys.manager });
  const { code: status, out, err } = await ended;
  remove();
  expect([status, err]).toEqual([0, ""]);
  const printed = out.split(/^## (.+)\n/m).slice(1);
  for (const [index, [heading, wanted]] of Object.entries(PRINTED).entries()) {
    expect(printed[2 * index]).toBe(heading);
    expect(printed[2 * index + 1], heading).toMatch(wanted);
  }
});
