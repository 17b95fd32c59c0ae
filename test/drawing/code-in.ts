import { renderAsync } from "@resvg/resvg-js";
import { type Scene, svg } from "@rimwise/drawing";
import { qrInPng } from "./read-qr.ts";

const DOTS_PER_MM = 300 / 25.4;

/** What a scanner reads on a page that is printed at 300 dots to the inch; undefined if it reads nothing. */
export async function qrIn(page: Scene): Promise<string | undefined> {
  const width = Math.round(page.widthMm * DOTS_PER_MM);
  const image = await renderAsync(svg(page), {
    fitTo: { mode: "width", value: width },
    font: { loadSystemFonts: false },
  });
  return qrInPng(image.asPng());
}
