import { expect, test } from "vitest";
import { type Line, linesOf, MOST_LINE_BYTES } from "./lines.ts";

async function linesIn(bytes: Buffer, pieceLength: number): Promise<Line[]> {
  async function* pieces() {
    for (let start = 0; start < bytes.length; start += pieceLength)
      yield bytes.subarray(start, start + pieceLength);
  }
  const lines: Line[] = [];
  for await (const line of linesOf(pieces())) lines.push(line);
  return lines;
}

test("however a file arrives, its lines are the same bytes, numbered from 1", async () => {
  const parts = ["a", "é", "🪵", "\n", "\r\n", "\r"];
  const texts = parts.flatMap((one) => parts.flatMap((two) => parts.map((three) => one + two + three + one)));
  for (const text of ["", ...texts]) {
    for (const pieceLength of [1, 2, 3, 5, 100]) {
      const lines = await linesIn(Buffer.from(text), pieceLength);
      expect(lines.map(({ bytes }) => bytes.toString())).toEqual(text.match(/[^\n]*\n|[^\n]+$/g) ?? []);
      expect(lines.map(({ number }) => number)).toEqual(lines.map((_, index) => index + 1));
      expect(lines.every(({ isUtf8, isTooLong }) => isUtf8 && !isTooLong)).toBe(true);
    }
  }
});

test("the byte-order mark is taken from the first line only", async () => {
  const lines = await linesIn(Buffer.from("\uFEFFa\n\uFEFFb\n"), 2);
  expect(lines.map(({ bytes }) => bytes.toString())).toEqual(["a\n", "\uFEFFb\n"]);
});

test("a line that is not UTF-8 is reported, and the next is read", async () => {
  const lines = await linesIn(Buffer.from([0x61, 0x0a, 0xe9, 0x0a, 0xc3, 0xa9, 0x0a]), 1);
  expect(lines.map(({ isUtf8 }) => isUtf8)).toEqual([true, false, true]);
});

test("a line may be 64 KiB long, and of a longer one nothing is kept", async () => {
  const longest = `${"x".repeat(MOST_LINE_BYTES - 1)}\n`;
  const lines = await linesIn(Buffer.from(`${longest}x${longest}a\n`), 1000);
  expect(lines.map(({ bytes, isTooLong }) => [bytes.length, isTooLong])).toEqual([
    [MOST_LINE_BYTES, false],
    [0, true],
    [2, false],
  ]);
});
