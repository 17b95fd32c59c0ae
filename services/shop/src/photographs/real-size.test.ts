import { crc32, deflateSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { hasSaidSize } from "./real-size.ts";

const hex = (text: string) => Buffer.from(text, "hex");

function chunk(name: string, content: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, "latin1"), content]);
  const whole = Buffer.alloc(body.length + 8);
  whole.writeUInt32BE(content.length);
  body.copy(whole, 4);
  whole.writeUInt32BE(crc32(body), body.length + 4);
  return whole;
}

/** A PNG (third edition) that says this size: `tail` is its depth, colour type, two methods and interlacing. */
function png(
  width: number,
  height: number,
  packed: Buffer,
  tail = "0800000000",
  end = Buffer.alloc(0),
): Buffer {
  const header = Buffer.alloc(8);
  header.writeUInt32BE(width);
  header.writeUInt32BE(height, 4);
  return Buffer.concat([
    hex("89504e470d0a1a0a"),
    chunk("IHDR", Buffer.concat([header, hex(tail)])),
    chunk("IDAT", packed),
    chunk("IEND", end),
  ]);
}

const fits = (width: number, height: number, unpacked: number, tail?: string) =>
  hasSaidSize(png(width, height, deflateSync(Buffer.alloc(unpacked)), tail), "image/png", { width, height });

describe("a PNG is of the size it says", () => {
  // Bytes of a row: a filter byte and the samples (PNG specification, 7.2); interlaced 8 x 8 has rows in seven passes (8.2).
  test.each([
    ["grey, 8 bits", 10, 4, 4 * 11, "0800000000"],
    ["grey, 1 bit", 10, 4, 4 * 3, "0100000000"],
    ["colour with alpha, 16 bits", 10, 4, 4 * 81, "1006000000"],
    ["palette, 4 bits", 3, 2, 2 * 3, "0403000000"],
    ["grey, interlaced", 8, 8, 1 * 2 + 1 * 2 + 1 * 3 + 2 * 3 + 2 * 5 + 4 * 5 + 4 * 9, "0800000001"],
    ["one pixel, interlaced", 1, 1, 2, "0800000001"],
  ])("%s", async (_what, width, height, bytes, tail) => {
    expect(await fits(width, height, bytes, tail)).toBe(true);
    expect(await fits(width, height, bytes - 1, tail), "one byte less").toBe(false);
    expect(await fits(width, height, bytes + 1, tail), "one byte more").toBe(false);
  });

  test("not when it is unpacked to a thousand times as much, or something is hidden behind the picture", async () => {
    expect(await fits(10, 4, 100_000_000)).toBe(false);
    const packed = deflateSync(Buffer.alloc(44));
    const said = { width: 10, height: 4 };
    const behind = png(10, 4, Buffer.concat([packed, Buffer.from("hidden")]));
    expect(await hasSaidSize(behind, "image/png", said)).toBe(false);
    const inEnd = png(10, 4, packed, undefined, Buffer.from("hidden"));
    expect(await hasSaidSize(inEnd, "image/png", said)).toBe(false);
    const broken = png(10, 4, packed.subarray(0, -3));
    expect(await hasSaidSize(broken, "image/png", said)).toBe(false);
  });
});

test("a JPEG has one frame", async () => {
  const frame = hex("ffc0000b080010001801011100");
  const scan = hex("ffda0008010100003f00d2ff00cfffd9");
  const said = { width: 24, height: 16 };
  const jpeg = (...frames: Buffer[]) => Buffer.concat([hex("ffd8"), ...frames, scan]);
  expect(await hasSaidSize(jpeg(frame), "image/jpeg", said)).toBe(true);
  expect(await hasSaidSize(jpeg(), "image/jpeg", said)).toBe(false);
  expect(await hasSaidSize(jpeg(frame, hex("ffc2000b08270f270f01011100")), "image/jpeg", said)).toBe(false);
});

test("a WebP's picture covers its canvas", async () => {
  const riff = (name: string, content: Buffer) => {
    const head = Buffer.alloc(8);
    head.write(name, 0, "latin1");
    head.writeUInt32LE(content.length, 4);
    return Buffer.concat([head, content, Buffer.alloc(content.length % 2)]);
  };
  // 24 x 16 in 14 bits each, less one (RFC 9649, section 3.4).
  const picture = riff("VP8L", hex("2f17c00300071011118888fe07"));
  const webp = (canvas: string) =>
    Buffer.concat([riff("RIFF", Buffer.alloc(0)), Buffer.from("WEBP"), riff("VP8X", hex(canvas)), picture]);
  const covers = (canvas: string, width: number, height: number) =>
    hasSaidSize(webp(canvas), "image/webp", { width, height });
  expect(await covers("000000001700000f0000", 24, 16)).toBe(true);
  expect(await covers("000000000f27000f2700", 10_000, 10_000)).toBe(false);
});
