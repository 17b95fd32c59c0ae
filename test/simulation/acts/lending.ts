import { found, isUsable, type Model, type ModelBit } from "../model.ts";
import { type Actor, isStaff, type Person, PROGRAM } from "../people.ts";
import type { Scene } from "../scene.ts";
import { type Prepare, pick } from "./act.ts";

/** Somebody takes a bit out, for themselves or for another. */
export function lend(who: Actor, bitIndex: number, to: Person): Prepare {
  return (model, scene) => {
    const id = pick(model.bits, bitIndex)?.id ?? "";
    const personId = scene.personIds[to];
    return {
      who,
      what: "lend",
      method: "POST",
      url: "/v1/loans",
      body: { bitId: id, personId },
      mayCome: (now) => {
        if (!isStaff(who) && who !== to) return ["not-yours"];
        const bit = found(now.bits, id);
        if (!isUsable(bit)) return ["bit-not-usable"];
        return [bit.loanId === undefined ? "done" : "bit-not-available"];
      },
      apply: (now, answer) => {
        now.loans.push({ id: answer.id, bitId: id, personId, isOut: true });
        Object.assign(next(found(now.bits, id)), { loanId: answer.id });
      },
    };
  };
}

/** Somebody brings a bit back. */
export function bringBack(who: Actor, loanIndex: number): Prepare {
  return (model, scene) => {
    const loan = pick(model.loans, loanIndex);
    if (loan === undefined) return undefined;
    const { id, bitId, personId } = loan;
    return {
      who,
      what: "bring back",
      method: "POST",
      url: `/v1/loans/${id}/return`,
      body: {},
      mayCome: (now) => {
        if (!seesLoan(who, personId, scene)) return ["not-found"];
        return [found(now.loans, id).isOut ? "done" : "loan-ended"];
      },
      apply: (now) => {
        found(now.loans, id).isOut = false;
        next(found(now.bits, bitId)).loanId = undefined;
      },
    };
  };
}

/** Whether somebody sees a loan: whoever is not in charge sees their own. */
export function seesLoan(who: Actor, borrowerId: string, { personIds }: Scene): boolean {
  return isStaff(who) || (who !== PROGRAM && personIds[who] === borrowerId);
}

/** Something happened to a bit. */
export function next(bit: ModelBit): ModelBit {
  bit.version += 1;
  return bit;
}

/** Something happened to a bit that plans may rest on. */
export function nextForPlans(model: Model, id: string): ModelBit {
  const bit = next(found(model.bits, id));
  bit.changes += 1;
  return bit;
}
