import { randomBytes } from "node:crypto";

const SALT_BYTES = 16;

/** A salt that nobody can guess: without it a digest of a name says nothing of the name. */
export function newSalt(): string {
  return randomBytes(SALT_BYTES).toString("hex");
}
