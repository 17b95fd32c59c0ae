import { FORMS } from "@rimwise/domain";
import { expect, test } from "vitest";
import { COLUMN_NAMES } from "./columns.ts";
import { nearestName } from "./nearest.ts";

const KINDS = FORMS.map(({ kind }) => kind);

test.each([
  ["spiral down cut", "spiral-down-cut"],
  ["Spiral_Down_Cut", "spiral-down-cut"],
  ["rond over", "round-over"],
  ["panel raiser", "panel-raising"],
  ["Straight", "straight"],
  ["dragon", undefined],
  ["", undefined],
  ["---", undefined],
])("the kind nearest to %j is %j", (written, nearest) => {
  expect(nearestName(written, KINDS)).toBe(nearest);
});

test.each([
  ["diameter", "diameterMm"],
  ["Shank Diameter", "shankDiameterMm"],
  ["notes ", "notes"],
])("the column nearest to %j is %j", (written, nearest) => {
  expect(nearestName(written, COLUMN_NAMES)).toBe(nearest);
});
