import { FONT_FILES } from "./fonts.ts";

/** An SVG as PNG, this many pixels wide: drawn beside the event loop, with the fonts that ship with the service and no other. */
export async function pngOf(svg: string, widthPx: number): Promise<Buffer> {
  // Loaded with the first picture, so that the start does not wait for it.
  const { renderAsync } = await import("@resvg/resvg-js");
  const image = await renderAsync(svg, {
    font: { loadSystemFonts: false, fontFiles: FONT_FILES, defaultFontFamily: "DejaVu Sans" },
    fitTo: { mode: "width", value: widthPx },
  });
  return image.asPng();
}
