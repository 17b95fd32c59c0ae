import fc from "fast-check";
import { SaxesParser } from "saxes";
import { describe, expect, it } from "vitest";
import type { Scene } from "../scene/scene.ts";
import { svg } from "./svg.ts";

const HOSTILE = [
  `</title><script>alert(1)</script>`,
  `" onload="alert(1)`,
  `]]>&lt;!-- & "quotes' >`,
  `&#x0; &amp; %3Cscript%3E`,
  `\u0000\u0008\uFFFF\uD83D lone`,
  `ארבע עשר \u202E gnp.exe`,
  `🪵🪚 ${"👩‍🔧".repeat(40)}`,
  "x".repeat(10_000),
];

function sceneOf(text: string): Scene {
  return {
    widthMm: 100,
    heightMm: 20,
    title: text,
    description: text,
    items: [
      {
        kind: "group",
        of: text,
        label: text,
        items: [
          { kind: "text", xMm: 3, yMm: 9, sizeMm: 3, anchor: "start", weight: "bold", text, whole: text },
        ],
      },
    ],
  };
}

/** The names of the elements, and the text in them; throws where a parser of others finds a fault. */
function parsed(text: string) {
  const names: string[] = [];
  const texts: string[] = [];
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name }) => names.push(name));
  parser.on("text", (each) => texts.push(each));
  parser.write(text).close();
  return { names, texts };
}

describe("any text is safe in a drawing", () => {
  it.each(HOSTILE.map((text) => [text.slice(0, 24), text]))("%j", (_, text) => {
    const { names, texts } = parsed(svg(sceneOf(text)));
    expect(names).toEqual(["svg", "title", "desc", "rect", "g", "text", "title"]);
    const kept = texts.filter((each) => each.trim() !== "");
    expect(new Set(kept).size).toBe(1);
  });

  it("whatever it is", () => {
    fc.assert(
      fc.property(
        fc.string({ unit: "binary", maxLength: 60 }),
        fc.string({ maxLength: 60 }),
        (one, other) => {
          expect(parsed(svg(sceneOf(one + other), { idPrefix: other })).names).toContain("svg");
        },
      ),
    );
  });
});

describe("a drawing", () => {
  const empty: Scene = {
    widthMm: 40,
    heightMm: 20.5,
    title: "A bit",
    description: "Nothing of it.",
    items: [],
  };

  it("is as large as it says, and has a name and a description", () => {
    const text = svg(empty);
    expect(text).toContain('width="40mm" height="20.5mm" viewBox="0 0 40 20.5"');
    expect(text).toContain('role="img" aria-labelledby="drawing-title drawing-desc"');
    expect(
      parsed(text)
        .texts.map((each) => each.trim())
        .filter(Boolean),
    ).toEqual(["A bit", "Nothing of it."]);
  });

  it("has ids of its own where several stand on a page", () => {
    expect(svg(empty, { idPrefix: "p7" })).toContain('<title id="p7-title">');
  });

  it("writes numbers short, and never a minus before a nought", () => {
    const line = {
      kind: "path" as const,
      shows: { of: "x" },
      contours: [
        { start: { xMm: 1 / 3, yMm: -0.00001 }, pieces: [{ to: { xMm: 2, yMm: 1e-7 } }], isClosed: false },
      ],
      line: "thin" as const,
      fill: "none" as const,
    };
    expect(svg({ ...empty, items: [line] })).toContain('d="M0.333 0L2 0"');
  });
});
