import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { getDocument, type PDFPageProxy } from "pdfjs-dist/legacy/build/pdf.mjs";

const PDFJS = dirname(createRequire(import.meta.url).resolve("pdfjs-dist/package.json"));

/** What a general-purpose reader of PDF (pdfjs-dist) finds in a file. */
export type ReadPdf = {
  readonly title: string;
  readonly language: string;
  readonly isTagged: boolean;
  readonly pages: readonly ReadPage[];
  /** All of its text in the order in which it is read. */
  readonly text: string;
};

export type ReadPage = {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly texts: readonly {
    readonly text: string;
    readonly leftMm: number;
    readonly rightMm: number;
    readonly baselineMm: number;
  }[];
  /** Standard structure types of its elements, in order, each with what is said in place of it. */
  readonly elements: readonly { readonly role: string; readonly alt: string | undefined }[];
};

const MM_PER_PT = 25.4 / 72;

type Node = Exclude<Awaited<ReturnType<PDFPageProxy["getStructTree"]>>, null>;

/** Reads a PDF. Throws at one that is broken. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({
    data: new Uint8Array(bytes),
    useSystemFonts: false,
    verbosity: 0,
    standardFontDataUrl: pathToFileURL(join(PDFJS, "standard_fonts/")).href,
  });
  const pdf = await task.promise;
  const { info } = await pdf.getMetadata();
  const pages: ReadPage[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
    const { items } = await page.getTextContent();
    const tree = await page.getStructTree();
    pages.push({
      widthMm: (right - left) * MM_PER_PT,
      heightMm: (top - bottom) * MM_PER_PT,
      texts: items.flatMap((item) => {
        if (!("str" in item) || item.str === "") return [];
        const [, , , , x = 0, y = 0] = item.transform;
        const leftMm = x * MM_PER_PT;
        return [
          {
            text: item.str,
            leftMm,
            rightMm: leftMm + item.width * MM_PER_PT,
            baselineMm: (top - y) * MM_PER_PT,
          },
        ];
      }),
      elements: tree === null ? [] : elementsIn(tree),
    });
  }
  const mark = await pdf.getMarkInfo();
  const title = String(Reflect.get(info, "Title"));
  const language = String(Reflect.get(info, "Language"));
  await task.destroy();
  const text = pages.flatMap(({ texts }) => texts.map((each) => each.text)).join(" ");
  return { title, language, isTagged: mark?.Marked === true, pages, text };
}

function elementsIn(node: Node): ReadPage["elements"] {
  const { role, children } = node;
  const own =
    role === "Root"
      ? []
      : [{ role, alt: Object.hasOwn(node, "alt") ? String(Reflect.get(node, "alt")) : undefined }];
  return [...own, ...children.flatMap((child) => ("role" in child ? elementsIn(child) : []))];
}
