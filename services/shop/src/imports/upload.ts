import { createHash } from "node:crypto";
import type { FileHandle } from "node:fs/promises";
import type { Readable } from "node:stream";
import { Problem } from "../problems/problem.ts";
import { openScratchFile } from "./scratch-file.ts";

/** A body that has arrived whole and lies on the disk. */
export type Upload = {
  /** SHA-256 of its bytes, in hex. */
  readonly sha256: string;
  /** Its bytes, from the start. */
  readonly read: () => AsyncIterable<Buffer>;
  /** Ends it; nothing of it stays. */
  readonly close: () => Promise<void>;
};

/** Most of one file, MiB. */
export const MOST_UPLOAD_MIB = 32;

export const MOST_UPLOAD_BYTES = MOST_UPLOAD_MIB * 1024 * 1024;

/**
 * Takes in a body as it comes, never holding more of it than one piece. Throws `body-too-large`, and
 * `malformed-request` for one that breaks off.
 */
export async function receiveUpload(body: Readable): Promise<Upload> {
  const file = await openScratchFile();
  try {
    const sha256 = await writeAll(body, file);
    return { sha256, read: () => bytesOf(file), close: () => file.close() };
  } catch (error) {
    await file.close();
    throw error;
  }
}

async function writeAll(body: Readable, file: FileHandle): Promise<string> {
  const hash = createHash("sha256");
  let bytes = 0;
  for await (const piece of piecesOf(body)) {
    bytes += piece.length;
    if (bytes > MOST_UPLOAD_BYTES) {
      throw new Problem("body-too-large", `A file may have ${MOST_UPLOAD_MIB} MiB. Send it in parts.`, {
        headers: { Connection: "close" },
      });
    }
    hash.update(piece);
    await file.appendFile(piece);
  }
  return hash.digest("hex");
}

/** A caller who leaves before the end is no error of this service. */
async function* piecesOf(body: Readable): AsyncGenerator<Buffer> {
  try {
    for await (const piece of body) yield Buffer.from(piece);
  } catch {
    throw new Problem("malformed-request", "The body broke off before its end. Nothing was changed.");
  }
}

function bytesOf(file: FileHandle): AsyncIterable<Buffer> {
  return file.createReadStream({ start: 0, autoClose: false });
}
