import {
  hasEverySign,
  type Item,
  type MeasureItem,
  measureLines,
  type PathItem,
  pathData,
  type Scene,
  STROKES,
  type Stroke,
  type TextItem,
  TONES,
  textBox,
  textWidthMm,
} from "@rimwise/drawing";

/** What is drawn: a path with its tone and stroke, or a text whose left end is known. Millimetres of paper. */
export type PdfContent =
  | { readonly kind: "path"; readonly data: string; readonly tone?: string; readonly stroke?: Stroke }
  | {
      readonly kind: "text";
      readonly xMm: number;
      readonly yMm: number;
      readonly sizeMm: number;
      readonly widthMm: number;
      readonly weight: TextItem["weight"];
      readonly text: string;
    };

/** A page's structure as a reader of the document meets it: elements (ISO 32000-1, 14.8.4), what stands in them, and what is passed over. */
export type PdfNode =
  | {
      readonly kind: "element";
      readonly element: string;
      readonly alt?: string;
      /** What is read in place of what is drawn. */
      readonly actual?: string;
      readonly nodes: readonly PdfNode[];
    }
  | { readonly kind: "content"; readonly content: readonly PdfContent[] }
  | {
      readonly kind: "passed-over";
      readonly of: "Pagination" | "Layout";
      readonly content: readonly PdfContent[];
    };

export type PdfPage = {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly nodes: readonly PdfNode[];
};

/** Parts of a sheet that hold other parts, and those that hold what is drawn; by the names of the standard structure types. */
const HOLDERS: Readonly<Record<string, string>> = { label: "Sect", table: "Table", row: "TR" };
const LEAVES: Readonly<Record<string, string>> = {
  title: "H1",
  heading: "H2",
  paragraph: "P",
  "list-item": "LBody",
  picture: "Figure",
  "header-cell": "TH",
  cell: "TD",
};

/** A page of a sheet as the structure and the strokes of a PDF. */
export function pdfPage({ widthMm, heightMm, items }: Scene): PdfPage {
  return { widthMm, heightMm, nodes: partsOf(items) };
}

/** Things that follow each other in a list are one list. */
function partsOf(items: readonly Item[]): PdfNode[] {
  const nodes: PdfNode[] = [];
  let list: PdfNode[] = [];
  for (const item of items) {
    if (item.kind === "group" && item.of === "list-item") {
      if (list.length === 0) nodes.push({ kind: "element", element: "L", nodes: list });
      list.push({ kind: "element", element: "LI", nodes: [partOf(item)] });
    } else {
      list = [];
      nodes.push(partOf(item));
    }
  }
  return nodes;
}

function partOf(item: Item): PdfNode {
  if (item.kind !== "group" || item.of === "running") {
    const of = item.kind === "group" ? "Pagination" : "Layout";
    return { kind: "passed-over", of, content: contentOf(item) };
  }
  const holder = HOLDERS[item.of];
  if (holder !== undefined) return { kind: "element", element: holder, nodes: partsOf(item.items) };
  const element = LEAVES[item.of] ?? "P";
  if (item.of === "picture") {
    const content = item.items.flatMap(contentOf);
    return { kind: "element", element, alt: item.label ?? "", nodes: [{ kind: "content", content }] };
  }
  return { kind: "element", element, nodes: item.items.flatMap(readNodes) };
}

/** What is read of an item: of a text that was shortened, or whose signs the font has not, the whole of it. */
function readNodes(item: Item): PdfNode[] {
  const node: PdfNode = { kind: "content", content: contentOf(item) };
  if (item.kind !== "text") return [node];
  const { text, whole = text, weight } = item;
  if (whole === text && hasEverySign(text, weight)) return [node];
  return [{ kind: "element", element: "Span", actual: whole, nodes: [node] }];
}

function contentOf(item: Item): PdfContent[] {
  switch (item.kind) {
    case "text":
      return textContent(item);
    case "path":
      return pathContent(item);
    case "measure":
      return measureContent(item);
    case "group":
      return item.items.flatMap(contentOf);
  }
}

function textContent(item: TextItem): PdfContent[] {
  const { yMm, sizeMm, weight, text } = item;
  if (text === "") return [];
  const { leftMm: xMm } = textBox(item);
  return [{ kind: "text", xMm, yMm, sizeMm, weight, text, widthMm: textWidthMm(text, sizeMm, weight) }];
}

function pathContent({ contours, line, fill }: PathItem): PdfContent[] {
  const [stroke, tone] = [STROKES[line], TONES[fill]];
  if (contours.length === 0 || (stroke === undefined && tone === undefined)) return [];
  return [{ kind: "path", data: pathData(contours), ...(tone && { tone }), ...(stroke && { stroke }) }];
}

function measureContent(measure: MeasureItem): PdfContent[] {
  const { lines, arrows } = measureLines(measure);
  const { leftMm, rightMm, topMm, bottomMm } = textBox(measure.label);
  return [
    { kind: "path", data: pathData(lines), ...(STROKES.thin && { stroke: STROKES.thin }) },
    { kind: "path", data: pathData(arrows), tone: "#000" },
    { kind: "path", data: `M${leftMm} ${topMm}H${rightMm}V${bottomMm}H${leftMm}Z`, tone: "#fff" },
    ...textContent(measure.label),
  ];
}
