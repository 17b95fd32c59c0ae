import { crc32, deflateSync } from "node:zlib";
import { imageSize } from "image-size";
import { describe, expect, test } from "vitest";
import { orientationIn, tiffOf } from "./orientation.ts";
import { withoutMetadata } from "./remove.ts";

/** What must not be found in what is kept. */
const TELLING = ["51 deg", "Maker of cameras", "Jane's desk", "photoshop", "after the end"];

const hex = (text: string) => Buffer.from(text, "hex");
const latin = (text: string) => Buffer.from(text, "latin1");

/** A little-endian TIFF header (Exif 2.32, section 4.6) with a maker's name, an orientation and a place. */
function exif(orientation: number): Buffer {
  const tiff = Buffer.alloc(80);
  tiff.write("II", 0, "latin1");
  tiff.writeUInt16LE(42, 2);
  tiff.writeUInt32LE(8, 4);
  tiff.writeUInt16LE(2, 8);
  const entry = (at: number, tag: number, type: number, count: number, value: number) => {
    tiff.writeUInt16LE(tag, at);
    tiff.writeUInt16LE(type, at + 2);
    tiff.writeUInt32LE(count, at + 4);
    tiff.writeUInt32LE(value, at + 8);
  };
  entry(10, 0x010f, 2, 16, 40);
  entry(22, 0x0112, 3, 1, orientation);
  tiff.write("Maker of cameras", 40, "latin1");
  tiff.write("51 deg N", 60, "latin1");
  return tiff;
}

function segment(marker: string, content: Buffer): Buffer {
  const head = hex(`ff${marker}0000`);
  head.writeUInt16BE(content.length + 2, 2);
  return Buffer.concat([head, content]);
}

const PROFILE = segment("e2", latin("ICC_PROFILE\0\x01\x01profile"));
const FRAME = hex("ffc0000b080010001801011100");
const SCAN = hex("ffda0008010100003f00d2ff00cfffd020");

/** A JPEG (ITU-T T.81) of 24 × 16 as a telephone writes it. */
function jpeg(orientation: number): Buffer {
  return Buffer.concat([
    hex("ffd8"),
    segment("e0", latin("JFIF\0\x01\x02\x00\x00\x01\x00\x01\x00\x00")),
    segment("e1", Buffer.concat([latin("Exif\0\0"), exif(orientation)])),
    segment("e1", latin("http://ns.adobe.com/xap/1.0/\0<x>51 deg</x>")),
    PROFILE,
    segment("ed", latin("photoshop 3.0")),
    segment("fe", latin("Jane's desk")),
    FRAME,
    SCAN,
    hex("ffd9"),
    latin("after the end: 51 deg"),
  ]);
}

function chunk(name: string, content: Buffer): Buffer {
  const body = Buffer.concat([latin(name), content]);
  const whole = Buffer.alloc(body.length + 8);
  whole.writeUInt32BE(content.length);
  body.copy(whole, 4);
  whole.writeUInt32BE(crc32(body), body.length + 4);
  return whole;
}

/** A PNG of one pixel (PNG specification, third edition) with texts, a time and Exif. */
function png(orientation: number): Buffer {
  return Buffer.concat([
    hex("89504e470d0a1a0a"),
    chunk("IHDR", hex("00000001000000010800000000")),
    chunk("tEXt", latin("Author\0Jane's desk")),
    chunk("eXIf", exif(orientation)),
    chunk("tIME", hex("07ea0b1a150000")),
    chunk("IDAT", deflateSync(hex("0080"))),
    chunk("IEND", Buffer.alloc(0)),
    latin("after the end"),
  ]);
}

function riff(name: string, content: Buffer): Buffer {
  const head = Buffer.alloc(8);
  head.write(name, 0, "latin1");
  head.writeUInt32LE(content.length, 4);
  return Buffer.concat([head, content, Buffer.alloc(content.length % 2)]);
}

/** An extended WebP (RFC 9649, section 2.7) of 24 × 16 with Exif and XMP. */
function webp(orientation: number): Buffer {
  const content = Buffer.concat([
    latin("WEBP"),
    riff("VP8X", hex("0c0000001700000f0000")),
    riff("VP8L", hex("2f17c00300071011118888fe07")),
    riff("EXIF", exif(orientation)),
    riff("XMP ", latin("<x>51 deg</x>")),
  ]);
  return Buffer.concat([riff("RIFF", content), latin("after the end")]);
}

const kinds = [
  ["image/jpeg", jpeg],
  ["image/png", png],
  ["image/webp", webp],
] as const;

describe.each(kinds)("what is kept of %s", (type, imageOf) => {
  test.each([1, 6, 8])("tells nothing but the picture, and is turned as before (%i)", (orientation) => {
    const image = imageOf(orientation);
    const kept = withoutMetadata(image, type) ?? Buffer.alloc(0);
    const text = kept.toString("latin1");
    for (const telling of TELLING) expect(text).not.toContain(telling);
    const { width, height } = imageSize(image);
    expect(imageSize(kept)).toMatchObject({ width, height });
    expect(withoutMetadata(kept, type)?.equals(kept), "there is nothing left to take").toBe(true);
    if (type === "image/png") {
      const at = kept.indexOf("eXIf");
      expect(at < 0 ? 1 : orientationIn(kept.subarray(at + 4))).toBe(orientation);
    }
  });

  test("is nothing when its parts cannot be followed", () => {
    const image = imageOf(6);
    expect(withoutMetadata(image.subarray(0, 60), type)).toBeUndefined();
  });
});

test("a JPEG keeps its density, its colours and every byte of its picture, and the reader sees it turned", () => {
  const kept = withoutMetadata(jpeg(6), "image/jpeg") ?? Buffer.alloc(0);
  expect(imageSize(kept).orientation).toBe(6);
  for (const part of [PROFILE, FRAME, SCAN]) expect(kept.includes(part)).toBe(true);
  expect(kept.toString("latin1", 6, 10)).toBe("JFIF");
  expect(kept.subarray(-2)).toEqual(hex("ffd9"));
});

test("a WebP says that it has Exif only while it has, and how long it is", () => {
  for (const [orientation, flags] of [
    [1, 0],
    [6, 8],
  ] as const) {
    const kept = withoutMetadata(webp(orientation), "image/webp") ?? Buffer.alloc(0);
    expect(kept[20]).toBe(flags);
    expect(kept.readUInt32LE(4)).toBe(kept.length - 8);
  }
});

test("an orientation is read in both byte orders, and what is none is upright", () => {
  expect(orientationIn(tiffOf(3))).toBe(3);
  expect(orientationIn(exif(5))).toBe(5);
  for (const broken of [Buffer.alloc(0), latin("II*\0"), exif(9), exif(0), exif(6).subarray(0, 20)])
    expect(orientationIn(broken)).toBe(1);
});
