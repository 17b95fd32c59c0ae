import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { mistyped } from "../../testing/mistyped.ts";
import { isFirstKey, keyDigest, matchesDigest, newKeyText, readKeyText } from "./key-text.ts";

test("a new key is read back, short enough to be read out, and no two are alike", () => {
  const keys = Array.from({ length: 100 }, newKeyText);
  for (const { text } of keys) {
    expect(readKeyText(text)).toEqual({ text });
    expect(text).toMatch(/^rw(_[0-9a-hjkmnp-tv-z]{8}){4}$/);
  }
  expect(new Set(keys.map(({ text }) => text)).size).toBe(100);
});

test("a key is read as people write it down: in capitals, with the letters that look like digits", () => {
  const { text } = newKeyText();
  expect(readKeyText(text.toUpperCase())).toEqual({ text });
  expect(readKeyText(`rw${text.slice(2).replaceAll("0", "o").replaceAll("1", "l")}`)).toEqual({ text });
});

test("a key with one character changed is refused by its checksum alone", () => {
  const { text } = newKeyText();
  for (const at of Array.from(text).keys()) {
    for (const character of "0123456789abcdefghjkmnpqrstvwxyz_ ") {
      const changed = text.slice(0, at) + character + text.slice(at + 1);
      expect(readKeyText(changed) !== undefined, changed).toBe(changed === text);
    }
  }
});

test("a key from before keys were short goes on working, by the id in it", () => {
  const id = "0".repeat(32);
  const secret = "ab".repeat(32);
  const body = `rw_${id}_${secret}`;
  const checksum = createHash("sha256").update(body).digest("hex").slice(0, 8);
  expect(readKeyText(`${body}_${checksum}`)).toEqual({ keyId: `key_${id}`, text: `${body}_${checksum}` });
  expect(readKeyText(`${body}_${"0".repeat(8)}`)).toBeUndefined();
});

test("a digest matches its own key and no other", () => {
  const { text } = newKeyText();
  expect(keyDigest(text)).toMatch(/^[0-9a-f]{64}$/);
  expect(keyDigest(text)).not.toContain(text.split("_")[2]);
  expect(matchesDigest(text, keyDigest(text))).toBe(true);
  expect(matchesDigest(newKeyText().text, keyDigest(text))).toBe(false);
  expect(matchesDigest(text, "00")).toBe(false);
});

test("a chosen first key is a long passphrase, never a mistyped key of ours", () => {
  expect(isFirstKey("correct-horse-battery-staple-lid")).toBe(true);
  expect(isFirstKey("correct-horse-battery-staple-li")).toBe(false);
  expect(isFirstKey("correct horse battery staple lids")).toBe(false);
  expect(isFirstKey("abcabcabcabcabcabcabcabcabcabcabcabc")).toBe(false);
  const { text } = newKeyText();
  expect(isFirstKey(mistyped(text))).toBe(false);
});
