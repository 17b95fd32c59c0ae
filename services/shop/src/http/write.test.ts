import { expect, it } from "vitest";
import { newBit, STAMP } from "../../testing/new-bit.ts";
import { writeThrough } from "./write.ts";

/** The code of the refusal of a write of the bit, when another record or the bit itself is gone at the commit. */
async function codeWithout(id: string): Promise<string | undefined> {
  const write = writeThrough(async () => ({ kind: "gone", noun: "record", id }));
  return write({ stamp: STAMP, changes: newBit("bit_1").changes }).then(
    () => undefined,
    ({ code }: { code: string }) => code,
  );
}

it("a write of a record that is gone is a 404", async () => {
  expect(await codeWithout("bit_1")).toBe("not-found");
});

it("a write that rests on a record that is gone is to be decided again", async () => {
  expect(await codeWithout("place_1")).toBe("changed-meanwhile");
});
