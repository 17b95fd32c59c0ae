import { deflateSync } from "node:zlib";
import { verifySheet } from "@rimwise/client";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  AT,
  EXPECTED,
  ending,
  jwkOf,
  KEYS,
  list,
  misplaced,
  NOW_S,
  ours,
  SHEET,
  sheet,
} from "./signed-sheets.ts";

const verdictOn = (jws: string, status: string | undefined = list()) =>
  verifySheet(jws, { keys: KEYS, at: AT, status, expected: EXPECTED });

describe("a sheet", () => {
  it("is good while it is signed by a known key, in its time, and not on the list", async () => {
    expect(await verdictOn(sheet())).toEqual({ isValid: true, sheet: SHEET, reasons: [] });
  });

  it("is not good with a single letter changed anywhere", async () => {
    const jws = sheet();
    for (const place of [5, jws.indexOf(".") + 20, jws.lastIndexOf(".") + 20]) {
      const changed = jws.slice(0, place) + (jws[place] === "A" ? "B" : "A") + jws.slice(place + 1);
      expect((await verdictOn(changed)).isValid, `letter ${place}`).toBe(false);
    }
  });

  it.each([
    ["another algorithm", sheet({}, { alg: "HS256" }), "not-a-sheet"],
    ["no algorithm", sheet({}, { alg: "none" }), "not-a-sheet"],
    ["an unknown key", sheet({}, { kid: "theirs" }), "key-unknown"],
    ["another key under a known name", sheet({}, {}, misplaced.privateKey), "signature-wrong"],
    ["another kind of statement", list(), "not-a-sheet"],
    ["a time that is still to come", sheet({ nbf: NOW_S + 1 }), "not-yet"],
    ["a time that is just over", sheet({ exp: NOW_S }), "expired"],
    ["no setting", sheet({ setting: 1 }), "not-a-sheet"],
    ["a time that is none", sheet({ exp: "soon" }), "not-a-sheet"],
    ["no place in the list", sheet({ status: {} }), "not-a-sheet"],
    ["a place before the first", sheet({ status: { status_list: { idx: -1, uri: "" } } }), "not-a-sheet"],
    ["a place between two", sheet({ status: { status_list: { idx: 8.5, uri: "" } } }), "not-a-sheet"],
    ["a fourth part", `${sheet()}.AAAA`, "not-a-sheet"],
    ["nothing", "", "not-a-sheet"],
    ["dots", "...", "not-a-sheet"],
    ["what is no base64", "ä.ö.ü", "not-a-sheet"],
    ["null", `${Buffer.from("null").toString("base64url")}.e30.e30`, "not-a-sheet"],
  ])("is not good with %s", async (_what, jws, reason) => {
    expect(await verdictOn(jws)).toMatchObject({ isValid: false, reasons: [reason] });
  });
});

describe("whatever is given as a sheet", () => {
  const base64url = fc
    .oneof(fc.json(), fc.string({ unit: "binary" }))
    .map((text) => Buffer.from(text).toString("base64url"));
  const garbage = fc.oneof(
    fc.string({ unit: "binary" }),
    fc.array(base64url, { maxLength: 5 }).map((parts) => parts.join(".")),
  );

  it("is never good if nobody signed it, and nothing is thrown", () =>
    fc.assert(
      fc.asyncProperty(garbage, garbage, async (jws, status) => {
        expect((await verdictOn(jws, list())).reasons).not.toEqual([]);
        expect((await verdictOn(sheet(), status)).reasons).toEqual(["status-not-signed"]);
      }),
    ));

  it("is never good by another signature", () =>
    fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 96 }), async (bytes) => {
        const content = sheet().split(".").slice(0, 2).join(".");
        const jws = `${content}.${Buffer.from(bytes).toString("base64url")}`;
        expect(await verdictOn(jws)).toEqual({ isValid: false, reasons: ["signature-wrong"] });
      }),
    ));

  it.each([
    ["no keys", []],
    ["a key of another curve", [{ ...jwkOf(ours.publicKey, "ours"), crv: "X25519" }]],
    ["half a key", [{ ...jwkOf(ours.publicKey, "ours"), x: "AAAA" }]],
  ])("is not good by %s", async (_what, keys) => {
    const verdict = await verifySheet(sheet(), {
      keys: JSON.parse(JSON.stringify({ keys })),
      at: AT,
      status: list(),
      expected: EXPECTED,
    });
    expect(verdict.isValid).toBe(false);
  });

  it("is not good at a moment that is none", async () => {
    const verdict = await verifySheet(sheet(), {
      keys: KEYS,
      status: list(),
      at: new Date("soon"),
      expected: EXPECTED,
    });
    expect(verdict.reasons).toEqual(["not-yet", "expired", "status-out-of-date"]);
  });
});

describe("the status list", () => {
  it("is needed", async () => {
    const verdict = await verifySheet(sheet(), { keys: KEYS, at: AT, expected: EXPECTED });
    expect(verdict).toMatchObject({ isValid: false, reasons: ["status-missing"] });
  });

  it("speaks against no sheet of the places around the one that it marks", async () => {
    for (const idx of [0, 7, 8, 10, 15]) {
      const beside = sheet({ status: { status_list: { idx, uri: "" } } });
      expect((await verdictOn(beside, list({ status_list: ending([9]) }))).isValid, `place ${idx}`).toBe(
        true,
      );
    }
  });

  it.each([
    ["marks the sheet", list({ status_list: ending([9]) }), "ended"],
    ["marks every sheet", list({ status_list: ending([...Array(16).keys()]) }), "ended"],
    ["marks the sheet, and is old", list({ status_list: ending([9]), exp: NOW_S - 1 }), "ended"],
    [
      "ends before the sheet's place",
      list({ status_list: { bits: 1, lst: deflateSync(Buffer.of(0)).toString("base64url") } }),
      "status-out-of-date",
    ],
    ["is old", list({ exp: NOW_S }), "status-out-of-date"],
    ["is signed by another key", list({}, {}, misplaced.privateKey), "status-not-signed"],
    ["is a sheet", sheet(), "status-not-signed"],
    ["is no list", list({ status_list: [] }), "status-not-signed"],
    ["has two bits for each", list({ status_list: { ...ending([]), bits: 2 } }), "status-not-signed"],
    ["is not compressed", list({ status_list: { bits: 1, lst: "AAAA" } }), "status-not-signed"],
    [
      "is cut short",
      list({ status_list: { bits: 1, lst: ending([1, 5, 12]).lst.slice(0, -4) } }),
      "status-not-signed",
    ],
    ["is nothing", "", "status-not-signed"],
  ])("speaks against a sheet if it %s", async (_what, status, reason) => {
    expect(await verdictOn(sheet(), status)).toMatchObject({ isValid: false, reasons: [reason] });
  });

  it("and the sheet's own time are reported together", async () => {
    const verdict = await verdictOn(sheet({ exp: NOW_S - 5 }), list({ exp: NOW_S }));
    expect(verdict.reasons).toEqual(["expired", "status-out-of-date"]);
  });
});
