import { expect, it } from "vitest";
import { formDiameterMm } from "./diameter.ts";
import type { Form } from "./form/registry.ts";

it.each<[Form, number]>([
  [{ kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25 }, 12.7],
  [{ kind: "dovetail", diameterMm: 12.7, angleDeg: 14, cuttingLengthMm: 9 }, 12.7],
  [{ kind: "core-box", diameterMm: 19, cuttingLengthMm: 12 }, 19],
  [{ kind: "round-over", diameterMm: 38, radiusMm: 12.7 }, 38],
])("%j", (form, want) => {
  expect(formDiameterMm(form)).toBeCloseTo(want, 9);
});
