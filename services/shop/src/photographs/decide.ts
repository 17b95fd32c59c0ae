import { hash } from "node:crypto";
import { imageSize } from "image-size";
import { withoutUndefined } from "../http/given.ts";
import { notValid, Problem } from "../problems/problem.ts";
import { creation, type Decision, newRecord, removal } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import { photographKind } from "./kind.ts";
import { withoutMetadata } from "./metadata/remove.ts";
import { hasSaidSize } from "./real-size.ts";
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

const MOST_PIXELS = 64_000_000;

/** A few views identify a bit. */
export const MOST_OF_A_BIT = 12;

/** Base64 comes in fours (RFC 4648, section 4). */
/** A sign of another alphabet, or a filling that is not at the end. Looked for one by one: a pattern of the whole would go back over megabytes. */
const NOT_BASE64 = /[^A-Za-z0-9+/=]|=[^=]|={3}/;
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
  const { bytes } = pictureIn({ mediaType, base64 });
  const fields = { bitId, personId, mediaType, caption, sha256: hash("sha256", bytes), bytes };
  const record: PhotographRecord = newRecord(id, withoutUndefined(fields), at);
  return { record, changes: [creation(photographKind, record, shownPhotograph(record))] };
}

/** Throws for a photograph whose picture is of another size than it says, or hides something. */
export async function requireSaidSize(photograph: NewPhotograph): Promise<void> {
  const { bytes, size } = pictureIn(photograph);
  if (await hasSaidSize(bytes, photograph.mediaType, size)) return;
  throw refused(
    "/base64",
    "Its picture is of another size than it says, or something is hidden behind it.",
    "an image that holds one picture of the size it says",
  );
}

/** Takes a photograph away; the event keeps what it was of. */
export function removePhotograph(record: PhotographRecord): Change {
  return removal(photographKind, record, shownPhotograph(record));
}

/** The picture alone, and the size that it says it is. Throws for what is no image of its type, whole and of a usual size. */
function pictureIn({ mediaType, base64 }: Pick<NewPhotograph, "mediaType" | "base64">) {
  if (NOT_BASE64.test(base64)) throw refused("/base64", "This is no base64.", "base64 (RFC 4648)");
  if (base64.length % CHARACTERS_A_GROUP !== 0)
    throw refused("/base64", "It is cut short.", "groups of four characters, the last filled with =");
  const given = Buffer.from(base64, "base64");
  const size = requireImage(given, mediaType);
  const bytes = withoutMetadata(given, mediaType);
  if (bytes === undefined) throw refused("/base64", "Its parts do not fit together.", "a whole image");
  return { bytes, size };
}

function requireImage(bytes: Buffer, mediaType: ImageType) {
  if (bytes.length > MOST_BYTES)
    throw refused("/base64", "It is too large.", `at most ${MOST_BYTES / 1024 / 1024} MiB decoded`);
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
  if (found.width * found.height > MOST_PIXELS)
    throw refused("/base64", "It has too many pixels.", `at most ${MOST_PIXELS / 1e6} million`);
  return found;
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
