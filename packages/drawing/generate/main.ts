import { readFile, writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { create, type Font } from "fontkit";

/** The fonts that the pictures are set in, and the name of the list of each. */
const FONTS = { SANS: "DejaVuSans.ttf", SANS_BOLD: "DejaVuSans-Bold.ttf" };
const WRITTEN = new URL("../src/font/generated/widths.ts", import.meta.url);
/** Digits of the numbers of a list. */
const BASE = 36;

const wanted = await widthsFile();
if (process.argv.includes("--check")) await check();
else await writeFile(WRITTEN, wanted);

async function widthsFile(): Promise<string> {
  const lists: string[] = [];
  for (const [name, file] of Object.entries(FONTS)) {
    const bytes = await readFile(fileURLToPath(import.meta.resolve(`dejavu-fonts-ttf/ttf/${file}`)));
    const font = create(bytes);
    if (!("glyphForCodePoint" in font)) throw new Error(`${file} holds several fonts`);
    lists.push(fontText(name, font));
  }
  return `// Written by packages/drawing/generate/main.ts from DejaVu 2.37. Do not edit.\n\n${lists.join("\n")}`;
}

/** One font as a constant: its measures, and the advance width of every sign it has, signs in a row by their runs of equal width. */
function fontText(name: string, font: Font): string {
  const groups: string[] = [];
  let next = Number.NaN;
  let runs: { width: number; count: number }[] = [];
  const close = () => {
    const text = runs.map(({ width, count }) =>
      count === 1 ? width.toString(BASE) : `${width.toString(BASE)}*${count.toString(BASE)}`,
    );
    if (runs.length > 0) groups.push(text.join(","));
    runs = [];
  };
  for (const code of [...font.characterSet].sort((one, other) => one - other)) {
    const width = Math.round(font.glyphForCodePoint(code).advanceWidth);
    if (code !== next) {
      close();
      groups.push(code.toString(BASE));
    }
    const last = runs.at(-1);
    if (last?.width === width) last.count += 1;
    else runs.push({ width, count: 1 });
    next = code + 1;
  }
  close();
  const { unitsPerEm, ascent, descent } = font;
  return `export const ${name} = {\n  unitsPerEm: ${unitsPerEm},\n  ascent: ${ascent},\n  descent: ${descent},\n  widths: "${groups.join(" ")}",\n} as const;\n`;
}

async function check(): Promise<void> {
  const present = await readFile(WRITTEN, "utf8").catch(() => undefined);
  if (present === wanted) return;
  process.stderr.write(`Stale, run \`pnpm generate\`: ${fileURLToPath(WRITTEN)}\n`);
  process.exitCode = 1;
}
