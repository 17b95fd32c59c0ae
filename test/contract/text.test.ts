import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { count } from "../../services/shop/testing/behind-the-service.ts";
import { bodyOf, OPERATIONS, urlOf } from "./bodies.ts";
import { made } from "./crib.ts";
import { type Furnished, furnish } from "./furnish.ts";
import { CSV, NDJSON, sendFile, straights } from "./import-files.ts";
import { openShop, PANEL_BIT, type Shop } from "./shop.ts";

let shop: Shop;
let furnished: Furnished;

beforeAll(async () => {
  shop = await openShop({}, () => new Date(), afterAll);
  furnished = await furnish((path, body, key) => made(shop, path, body, key));
}, 60_000);

// UAX #15, figure 3: the same letter in one character and in two; and the Angstrom sign, whose normal form is a letter.
const DECOMPOSED = "Fra\u0301ser \u212B";
const COMPOSED = "Fr\u00E1ser \u00C5";

/** What JSON can say and no text should hold. */
const UNWANTED = {
  "half a surrogate pair": "a\ud800b",
  "the other half": "a\udc00",
  NUL: "a\u0000b",
  "an escape": "a\u001b[31m",
  "a C1 control": "a\u0085b",
  DEL: "a\u007f",
  "an override of the direction": "a\u202egnp.exe",
  "an isolate": "a\u2066b",
};

const countEvents = () => count(shop, "events");

/** Every string in a body, by its JSON Pointer. */
function texts(value: unknown, pointer = ""): string[] {
  if (typeof value === "string") return [pointer];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => texts(each, `${pointer}/${name}`));
}

/** The body with another text at one place. */
function changedAt(body: object, pointer: string, text: string): object {
  const changed = structuredClone(body);
  const steps = pointer.slice(1).split("/");
  const last = steps.pop() ?? "";
  Reflect.set(
    steps.reduce<object>((at, step) => Object(Reflect.get(at, step)), changed),
    last,
    text,
  );
  return changed;
}

describe("text in a JSON body", () => {
  test("is the same in the answer, the record, the event and the search: in normal form C", async () => {
    const { body, status } = await shop.ask("POST", "/v1/bits", {
      body: { ...PANEL_BIT, name: DECOMPOSED, notes: "two\tcells\nand a line \u2126" },
    });
    expect([status, body.name]).toEqual([201, COMPOSED]);
    expect(body.notes).toBe("two\tcells\nand a line \u03A9");
    expect((await shop.ask("GET", `/v1/bits/${body.id}`)).body.name).toBe(COMPOSED);
    const { body: events } = await shop.ask("GET", `/v1/events?subjectId=${body.id}`);
    expect(events.data[0].data.after.name).toBe(COMPOSED);
    for (const q of [DECOMPOSED, COMPOSED]) {
      const { body: found } = await shop.ask("GET", `/v1/bits?q=${encodeURIComponent(q)}`);
      expect(found.data.map(({ id }: { id: string }) => id)).toContain(body.id);
    }
  });

  test.each(Object.entries(UNWANTED))(
    "with %s is refused by its field, and changes nothing",
    async (_what, text) => {
      const before = await countEvents();
      const answer = await shop.ask("POST", "/v1/bits", { body: { ...PANEL_BIT, name: text } });
      expect(answer.status).toBe(422);
      expect(answer.body.errors).toEqual([expect.objectContaining({ in: "body", pointer: "/name" })]);
      expect(await countEvents()).toBe(before);
    },
  );

  test("is refused at every place of every operation's body", async () => {
    const before = await countEvents();
    let places = 0;
    for (const operation of OPERATIONS.filter(({ takesJson }) => takesJson)) {
      const body = bodyOf(operation, furnished.ids);
      for (const pointer of texts(body)) {
        const url = urlOf(operation, furnished.ids);
        const hostile = changedAt(body, pointer, "a\u202eb");
        const { status, body: problem } = await shop.ask(operation.method, url, { body: hostile });
        expect(status, `${operation.id} ${pointer}`).toBe(422);
        expect(problem.errors[0], operation.id).toMatchObject({ in: "body", pointer });
        places += 1;
      }
    }
    expect(places).toBeGreaterThan(80);
    expect(await countEvents()).toBe(before);
  });

  test("that is not UTF-8 is no JSON (RFC 8259, section 8.1)", async () => {
    const bytes = Buffer.concat([Buffer.from('{"name":"'), Buffer.of(0xc3, 0x28), Buffer.from('"}')]);
    const { statusCode, body } = await shop.app.inject({
      method: "POST",
      url: "/v1/bits",
      headers: { authorization: `Bearer ${shop.managerKey}`, "content-type": "application/json" },
      payload: bytes,
    });
    expect([statusCode, JSON.parse(body).code]).toEqual([400, "not-json"]);
  });
});

test("text in a query and in a path is held to the same", async () => {
  for (const text of ["%00", "a%E2%80%AEb", "%1B"]) {
    const answer = await shop.ask("GET", `/v1/bits?q=${text}`);
    expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, "/q"]);
    expect((await shop.ask("GET", `/v1/bits/${text}`)).status).toBe(404);
  }
});

test("a reason is kept in the same form", async () => {
  const headers = { "Change-Reason": encodeURIComponent(DECOMPOSED) };
  const { body } = await shop.ask("POST", "/v1/bits", { body: PANEL_BIT, headers });
  const { body: events } = await shop.ask("GET", `/v1/events?subjectId=${body.id}`);
  expect(events.data[0].why).toBe(COMPOSED);
});

describe.each([
  ["CSV", CSV, (name: string) => straights([name])],
  ["NDJSON", NDJSON, (name: string) => `${JSON.stringify({ ...PANEL_BIT, name })}\n`],
])("text in an import as %s", (_format, type, fileWith) => {
  test("is kept in normal form C", async () => {
    const own = await openShop();
    expect((await sendFile(own, fileWith(DECOMPOSED), { type })).status).toBe(200);
    const { body } = await own.ask("GET", "/v1/bits");
    expect(body.data.map(({ name }: { name: string }) => name)).toEqual([COMPOSED]);
  });

  test("that is no text is refused by line and column, and shown harmless", async () => {
    const own = await openShop();
    const answer = await sendFile(own, fileWith("a\u202eb\u001bc"), { type });
    expect(answer.status).toBe(422);
    expect(answer.body.report.faults[0].column).toMatch(/^\/?name$/);
    expect(answer.text).not.toMatch(/\u202e|\\u001b/);
    expect((await own.ask("GET", "/v1/bits")).body.data).toEqual([]);
  });
});
