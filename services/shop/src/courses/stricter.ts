import type { Requirements } from "./schema.ts";

/** What two sets of requirements ask for together: of each the stricter. */
export function stricterOf(one: Requirements, other: Requirements): Requirements {
  const passPercents = [one.safetyTest, other.safetyTest].flatMap((test) => test?.passPercent ?? []);
  const ages = [one.instructionMaxAgeDays, other.instructionMaxAgeDays].filter((age) => age !== undefined);
  return {
    ...(passPercents.length > 0 && { safetyTest: { passPercent: Math.max(...passPercents) } }),
    ...((one.isDemonstrationNeeded === true || other.isDemonstrationNeeded === true) && {
      isDemonstrationNeeded: true,
    }),
    ...((one.isParentalConsentNeeded === true || other.isParentalConsentNeeded === true) && {
      isParentalConsentNeeded: true,
    }),
    ...(ages.length > 0 && { instructionMaxAgeDays: Math.min(...ages) }),
  };
}
