import { randomUUID } from "node:crypto";
import { type FileHandle, open, unlink } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";

/**
 * A new file that nobody else can open and that is gone once its handle is closed: its name is taken away at once, so that not
 * even `kill -9` leaves it behind.
 */
export async function openScratchFile(): Promise<FileHandle> {
  const path = join(tmpdir(), `rimwise-${randomUUID()}`);
  const handle = await open(path, "wx+", 0o600);
  try {
    await unlink(path);
    return handle;
  } catch (error) {
    await handle.close();
    throw error;
  }
}
