import { hash } from "node:crypto";
import { imageSize } from "image-size";
import { withoutUndefined } from "../http/given.ts";
import { notValid, Problem } from "../problems/problem.ts";
import { creation, type Decision, newRecord, removal } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import { photographKind } from "./kind.ts";
import { withoutMetadata } from "./metadata/remove.ts";
import {
  IMAGE_TYPES,
  type ImageType,
  MOST_BYTES,
  type NewPhotograph,
  type PhotographRecord,
  shownPhotograph,
} from "./schema.ts";
import { isWhole } from "./whole.ts";

/** More pixels than a camera makes are an attack on whoever opens them. */
const MOST_PIXELS_A_SIDE = 10_000;

/** A few views identify a bit. */
export const MOST_OF_A_BIT = 12;

/** Base64 comes in fours (RFC 4648, section 4). */
const CHARACTERS_A_GROUP = 4;

/** How the library names what the bytes are. */
const TYPE_OF_KIND: Readonly<Record<string, string>> = {
  jpg: "image/jpeg",
  png: "image/png",
  webp: "image/webp",
};

/** A photograph as it is kept: what it says it is, its bytes are, and it tells nothing but the picture. The event describes it without them. */
export function addPhotograph(
  id: string,
  bitId: string,
  { mediaType, caption, base64 }: NewPhotograph,
  kept: number,
  personId: string | undefined,
  at: string,
): Decision<PhotographRecord> {
  if (kept >= MOST_OF_A_BIT) {
    throw new Problem("too-many-photographs", `Bit ${bitId} has ${MOST_OF_A_BIT} already: remove one first.`);
  }
  if (base64.length % CHARACTERS_A_GROUP !== 0)
    throw refused("/base64", "It is cut short.", "groups of four characters, the last filled with =");
  const given = Buffer.from(base64, "base64");
  requireImage(given, mediaType);
  const bytes = withoutMetadata(given, mediaType);
  if (bytes === undefined) throw refused("/base64", "Its parts do not fit together.", "a whole image");
  const fields = { bitId, personId, mediaType, caption, sha256: hash("sha256", bytes), bytes };
  const record: PhotographRecord = newRecord(id, withoutUndefined(fields), at);
  return { record, changes: [creation(photographKind, record, shownPhotograph(record))] };
}

/** Takes a photograph away; the event keeps what it was of. */
export function removePhotograph(record: PhotographRecord): Change {
  return removal(photographKind, record, shownPhotograph(record));
}

function requireImage(bytes: Buffer, mediaType: ImageType): void {
  if (bytes.length > MOST_BYTES)
    throw refused("/base64", "It is too large.", `at most ${MOST_BYTES} bytes decoded`);
  const found = sizeOf(bytes);
  if (found === undefined)
    throw refused("/base64", "These bytes are no image.", `one of: ${IMAGE_TYPES.join(", ")}`);
  if (TYPE_OF_KIND[found.type ?? ""] !== mediaType) {
    throw refused(
      "/mediaType",
      "The bytes are of another type.",
      TYPE_OF_KIND[found.type ?? ""] ?? IMAGE_TYPES.join(", "),
    );
  }
  if (!isWhole(bytes, mediaType)) throw refused("/base64", "Its end is missing.", "a whole image");
  if (Math.max(found.width, found.height) > MOST_PIXELS_A_SIDE) {
    throw refused("/base64", "It has too many pixels.", `at most ${MOST_PIXELS_A_SIDE} on a side`);
  }
}

function sizeOf(bytes: Buffer) {
  try {
    return imageSize(bytes);
  } catch {
    // The library throws for whatever it does not know.
    return undefined;
  }
}

function refused(pointer: string, message: string, accepted: string): Problem {
  return notValid([{ in: "body", pointer, message, accepted }]);
}
