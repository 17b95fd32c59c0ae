import jsQr from "jsqr";
import { PNG } from "pngjs";

/** The package is CommonJS: its function is the default of the default, or the default itself. */
const readQr: typeof jsQr.default = Object(jsQr).default ?? jsQr;

/** What a scanner (jsqr) reads in a picture; undefined if it reads nothing. */
export function qrInPng(bytes: Buffer): string | undefined {
  const { data, width, height } = PNG.sync.read(bytes);
  return readQr(new Uint8ClampedArray(data), width, height)?.data;
}
