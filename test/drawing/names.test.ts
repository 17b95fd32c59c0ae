import { type Item, PICTURES, type PictureKind, plain, type Scene, svg } from "@rimwise/drawing";
import { describe, expect, it } from "vitest";
import { EXAMPLES } from "./examples.ts";
import { expectKept } from "./layout.ts";
import { readBack } from "./read-back.ts";

/** What somebody may call a thing: long, without a space, in other scripts, as markup. */
const NAMES: readonly (readonly [string, string])[] = [
  ["an ordinary one", "Panel raiser, rack 2"],
  ["none", ""],
  ["a very long one", "Raised panels for the doors of the tall kitchen cupboard ".repeat(175)],
  ["one long word", "x".repeat(2000)],
  ["markup", `</text><script>alert("1")</script><a href="javascript:alert(1)">`],
  ["right to left", "מסור פנל ".repeat(60)],
  ["marks of direction", "\u202Ereverse\u2066inside"],
  ["emoji", "👩‍🔧🪵🪚".repeat(90)],
  ["control characters and half pairs", "a\u0000\u0007b\uD83Dc\uFFFF"],
];

/** Every kind there is has an example: the record does not compile otherwise. */
const KINDS = Object.values(PICTURES).map(({ kind }) => kind);

describe.each(KINDS)("a %s picture", (kind) => {
  it.each(NAMES)("keeps its texts apart and on the page, and acts on nothing: %s", (_, name) => {
    for (const units of ["metric", "imperial"] as const) expectKept(EXAMPLES[kind](name, units));
  });

  it("loses nothing of a name silently", () => {
    const [, name = ""] = NAMES[2] ?? [];
    const { texts } = readBack(svg(EXAMPLES[kind](name, "metric")));
    // Once in the title, and again whole beside every text that was shortened.
    expect(texts.filter((text) => text.includes(plain(name))).length).toBeGreaterThan(1);
  });

  it("speaks one system of units", () => {
    const said = (units: "metric" | "imperial") =>
      readBack(svg(EXAMPLES[kind]("Alder Lane", units))).texts.join(" ");
    expect(said("metric")).not.toMatch(/\d in\b|mph|lb\b/);
    expect(said("imperial")).not.toMatch(/\d mm\b|m\/s/);
  });

  it("is the same for the same values", () => {
    const [one, other] = [EXAMPLES[kind]("Alder Lane", "metric"), EXAMPLES[kind]("Alder Lane", "metric")];
    expect(svg(one)).toBe(svg(other));
  });

  it("has a title, a description and groups that have names", () => {
    const scene = EXAMPLES[kind]("Alder Lane", "metric");
    expect(scene.title).toContain("Alder Lane");
    expect(scene.description.length).toBeGreaterThan(20);
    expect(groupLabels(scene).length).toBeGreaterThan(0);
  });
});

it("a kind is registered under its own name", () => {
  for (const [name, { kind, meaning }] of Object.entries(PICTURES)) {
    expect(kind satisfies PictureKind).toBe(name);
    expect(meaning).toMatch(/^[A-Z].*\.$/);
  }
});

function groupLabels({ items }: Pick<Scene, "items">): string[] {
  return items.flatMap((item: Item) =>
    item.kind === "group" ? [...(item.label === undefined ? [] : [item.label]), ...groupLabels(item)] : [],
  );
}
