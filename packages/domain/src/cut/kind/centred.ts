import type { Bit } from "../../bit/bit.ts";
import { formMiddleMm } from "../../bit/form/registry.ts";
import type { Outline } from "../../bit/outline.ts";
import { radiiInUse } from "../../bit/section.ts";
import type { UsualEnd } from "./profile.ts";

/**
 * The middle of the bit at the middle of the stock, so that both halves of a joint meet with their faces flush, and the fence where the
 * profile in use is narrowest, so that no part is shortened. Undefined for a form without a middle. Source: common practice.
 */
export function centredEnd({ form }: Bit, outline: Outline, thicknessMm: number): UsualEnd | undefined {
  const middleMm = formMiddleMm(form);
  if (middleMm === undefined) return undefined;
  const heightMm = middleMm + thicknessMm / 2;
  return { heightMm, fenceMm: radiiInUse(outline, { heightMm, fenceMm: 0, thicknessMm })?.leastMm ?? 0 };
}
