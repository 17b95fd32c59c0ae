import { renderAsync } from "@resvg/resvg-js";
import { type Scene, svg } from "@rimwise/drawing";
import jsQr from "jsqr";
import { PNG } from "pngjs";

/** The package is CommonJS: its function is the default of the default, or the default itself. */
const readQr: typeof jsQr.default = Object(jsQr).default ?? jsQr;

const DOTS_PER_MM = 300 / 25.4;

/** What a scanner (jsqr) reads on a page that is printed at 300 dots to the inch; undefined if it reads nothing. */
export async function qrIn(page: Scene): Promise<string | undefined> {
  const width = Math.round(page.widthMm * DOTS_PER_MM);
  const image = await renderAsync(svg(page), {
    fitTo: { mode: "width", value: width },
    font: { loadSystemFonts: false },
  });
  const png = PNG.sync.read(image.asPng());
  return readQr(new Uint8ClampedArray(png.data), png.width, png.height)?.data;
}
