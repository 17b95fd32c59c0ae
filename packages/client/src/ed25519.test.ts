import { expect, it } from "vitest";
import { isSignedBy } from "./ed25519.ts";

const bytes = (hex: string) => Uint8Array.from(hex.match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));

/** RFC 8032, section 7.1, tests 1 and 2: public key, message, signature. */
const VECTORS = [
  [
    "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
    "",
    "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
  ],
  [
    "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
    "72",
    "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00",
  ],
] as const;

it.each(VECTORS)("the library checks the signatures of RFC 8032: key %s", (key, message, signature) => {
  expect(isSignedBy(bytes(key), bytes(signature), bytes(message))).toBe(true);
  expect(isSignedBy(bytes(key), bytes(signature), bytes(`${message}00`))).toBe(false);
  const altered = bytes(signature);
  altered[40] = (altered[40] ?? 0) ^ 1;
  expect(isSignedBy(bytes(key), altered, bytes(message))).toBe(false);
});
