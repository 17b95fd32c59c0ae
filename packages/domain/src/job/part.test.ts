import { expect, it } from "vitest";
import { PART_FIELDS, partEdges } from "./part.ts";

const SIZE = { lengthMm: 600, widthMm: 60, thicknessMm: 19 };

it("cuts ends as end grain of the part's width, sides as long grain of its length, ends first", () => {
  expect(partEdges(SIZE, "all-round")).toEqual([
    { lengthMm: 60, grain: "end" },
    { lengthMm: 60, grain: "end" },
    { lengthMm: 600, grain: "long" },
    { lengthMm: 600, grain: "long" },
  ]);
});

it("a dado lies across the grain of a face, and is no end", () => {
  expect(partEdges(SIZE, "face-across")).toEqual([{ lengthMm: 60, grain: "across" }]);
});

it("says of each place what is cut there", () => {
  expect(PART_FIELDS.along.names.map((along) => partEdges(SIZE, along).length)).toEqual([
    2, 1, 2, 1, 4, 1, 1,
  ]);
});
