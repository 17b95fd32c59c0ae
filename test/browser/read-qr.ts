import jsQr from "jsqr";
import type { Page } from "playwright-core";
import { PNG } from "pngjs";

/** The package is CommonJS: its function is the default of the default, or the default itself. */
const readQr: typeof jsQr.default = Object(jsQr).default ?? jsQr;

/** What the QR code on a page says as it is seen now; undefined if none can be read. */
export async function qrOn(page: Page): Promise<string | undefined> {
  const png = PNG.sync.read(await page.screenshot());
  return readQr(new Uint8ClampedArray(png.data), png.width, png.height)?.data;
}
