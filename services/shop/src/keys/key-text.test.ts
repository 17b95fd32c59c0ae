import { expect, test } from "vitest";
import { isFirstKey, keyDigest, matchesDigest, newKeyText, readKeyText } from "./key-text.ts";

test("a new key is read back, and no two are alike", () => {
  const keys = Array.from({ length: 100 }, newKeyText);
  for (const key of keys) expect(readKeyText(key.text)).toEqual(key);
  expect(new Set(keys.map(({ text }) => text)).size).toBe(100);
});

test("a key with one character changed is refused by its checksum alone", () => {
  const { text } = newKeyText();
  for (const at of Array.from(text).keys()) {
    for (const character of "0123456789abcdefr_ ") {
      const changed = text.slice(0, at) + character + text.slice(at + 1);
      expect(readKeyText(changed) !== undefined, changed).toBe(changed === text);
    }
  }
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
  expect(isFirstKey(`${newKeyText().text.slice(0, -1)}x`)).toBe(false);
});
