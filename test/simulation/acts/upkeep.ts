import { found } from "../model.ts";
import { type Actor, isStaff } from "../people.ts";
import { type Prepare, pick } from "./act.ts";
import { nextForPlans } from "./lending.ts";

/** Whoever is not in charge holds as many bits in a day as the policy says. */
const HOLDS_USED_UP = "holds-used-up";

/** Somebody takes a bit out of use. */
export function hold(who: Actor, bitIndex: number): Prepare {
  return (model) => {
    const id = pick(model.bits, bitIndex)?.id ?? "";
    return {
      who,
      what: "hold",
      method: "POST",
      url: `/v1/bits/${id}/hold`,
      body: { reason: "A tooth looks odd." },
      mayCome: (now) => {
        const bit = found(now.bits, id);
        if (bit.isRetired) return ["bit-not-usable"];
        return isStaff(who) || bit.hold !== undefined ? ["done"] : ["done", HOLDS_USED_UP];
      },
      apply: (now) => {
        // The first reason stays unless somebody in charge says another.
        if (found(now.bits, id).hold !== undefined && !isStaff(who)) return;
        nextForPlans(now, id).hold = { sinceMs: now.nowMs };
      },
    };
  };
}

/** Somebody looks at a bit, and notes, holds or retires it. */
export function inspect(who: Actor, bitIndex: number, effect: "note" | "hold" | "retire"): Prepare {
  return (model) => {
    const id = pick(model.bits, bitIndex)?.id ?? "";
    return {
      who,
      what: `inspect to ${effect}`,
      method: "POST",
      url: `/v1/bits/${id}/inspections`,
      body: { findings: [], effect },
      mayCome: (now) => {
        if (!isStaff(who)) return ["scope-missing"];
        return [found(now.bits, id).isRetired ? "bit-not-usable" : "done"];
      },
      apply: (now, answer) => {
        const bit = nextForPlans(now, id);
        bit.inspections.push({ id: answer.id, atMs: now.nowMs, effect });
        if (effect === "hold") bit.hold = { sinceMs: now.nowMs, inspectionId: answer.id };
        if (effect === "retire") bit.isRetired = true;
      },
    };
  };
}

/** Somebody in charge lets a held bit be used again. */
export function release(who: Actor, bitIndex: number): Prepare {
  return (model) => {
    const id = pick(model.bits, bitIndex)?.id ?? "";
    return {
      who,
      what: "release",
      method: "POST",
      url: `/v1/bits/${id}/release`,
      body: { reason: "It was looked at." },
      mayCome: (now) => {
        if (!isStaff(who)) return ["scope-missing"];
        const { isRetired, hold: held, inspections } = found(now.bits, id);
        if (isRetired) return ["bit-not-usable"];
        if (held === undefined) return ["invalid-state"];
        const isInspected = inspections.some(
          (each) => each.effect === "note" && each.atMs >= held.sinceMs && each.id !== held.inspectionId,
        );
        return [isInspected ? "done" : "inspection-needed"];
      },
      apply: (now) => {
        nextForPlans(now, id).hold = undefined;
      },
    };
  };
}

/** By what is marked on it a bit's setting changes, or it cannot be run at all. */
const markedFor = (grams: number) => 7000 + 10 * grams;

/** Somebody enters what a bit weighs and what is marked on it; the careless send the version before. */
export function weigh(who: Actor, bitIndex: number, grams: number, isStale: boolean): Prepare {
  return (model) => {
    const bit = pick(model.bits, bitIndex);
    if (bit === undefined || bit.massG === grams) return undefined;
    const { id } = bit;
    const version = isStale ? bit.version - 1 : bit.version;
    return {
      who,
      what: "weigh",
      method: "PATCH",
      url: `/v1/bits/${id}`,
      body: { massG: grams, markedMaxRpm: markedFor(grams) },
      headers: { "if-match": `"${version}"` },
      mayCome: (now) => {
        if (!isStaff(who)) return ["scope-missing"];
        return [found(now.bits, id).version === version ? "done" : "version-stale"];
      },
      apply: (now) => {
        nextForPlans(now, id).massG = grams;
      },
    };
  };
}
