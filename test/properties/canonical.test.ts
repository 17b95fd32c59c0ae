import { createRequire } from "node:module";
import fc from "fast-check";
import { expect, test } from "vitest";
import { canonicalText } from "../../services/shop/src/store/canonical.ts";

/** Names that need escapes, look like places in a list, or come in another order by code point than by code unit. */
const name = fc.oneof(
  fc.string({ unit: "binary" }),
  fc.nat().map(String),
  fc.constantFrom("__proto__", "é", "\ufb33", "😀"),
);

/** More names than are put in order one by one, too. */
const value = fc.oneof(
  fc.jsonValue({ stringUnit: "binary" }),
  fc.dictionary(name, fc.jsonValue(), { maxKeys: 100 }),
);

// The package's types describe an ES module; what it ships is CommonJS. One of the authors of RFC 8785 wrote it.
const canonicalize: (value: unknown) => string | undefined = createRequire(import.meta.url)("canonicalize");

test("canonical JSON is what a library for RFC 8785 makes of the same value", () => {
  fc.assert(
    fc.property(value, (any) => {
      expect(canonicalText(any)).toBe(canonicalize(any));
    }),
  );
});
