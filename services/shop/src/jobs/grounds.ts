import { type Cut, formDiameterMm, showIn } from "@rimwise/domain";
import type { BitRecord } from "../bits/schema.ts";
import { knownRouter } from "../learned/learned.ts";
import { sealOf } from "../plans/seal.ts";
import { policyInForce } from "../policy/in-force.ts";
import { whyElsewhere } from "../reservations/elsewhere.ts";
import { shopLayer } from "../shop-policy/reads.ts";
import type { Question } from "../store/query.ts";
import { woods } from "../woods/reads.ts";
import type { JobGroundChange } from "./act-schema.ts";
import { type ComputedCut, timeOf } from "./computed.ts";
import { jobBit } from "./facts.ts";
import { mendedBits } from "./made.ts";
import { type Attempt, asked } from "./planned.ts";
import type { JobRecord } from "./schema.ts";
import type { JobGround } from "./work-schema.ts";

/** Grounds are the same for every cut: this one stands for all. */
const ANY_CUT: Cut = { kind: "groove", depthMm: 1, edges: [{ lengthMm: 1000, grain: "long" }] };

/** The digest of a plan, and what it rests on beside the cut: as a fingerprint, and what people want to know when it has changed. */
export function sealed(own: Attempt | undefined): Pick<ComputedCut, "digest" | "ground"> {
  if (own?.outcome.kind !== "planned") return { digest: undefined, ground: undefined };
  const { candidate, machine, outcome } = own;
  const { record } = candidate.bit;
  return {
    digest: sealOf(outcome.input).digest,
    ground: {
      bitId: record.id,
      routerId: machine.routerId,
      mounting: machine.mounting,
      woodId: outcome.request.woodId,
      digest: sealOf({ ...outcome.input, cut: ANY_CUT }).digest,
      diameterMm: formDiameterMm(record.form),
      sharpenedAt: record.sharpenedAt ?? null,
    },
  };
}

/** What a job rests on that is not as it was when it was computed, and who has its bits: each with a sentence. */
export function* groundsChanged(job: JobRecord, at: string): Question<JobGroundChange[]> {
  const shop = yield* shopLayer();
  const policy = policyInForce(shop, job.policy ?? {});
  const mended = mendedBits(job.made, policy);
  const time = timeOf(job, at);
  const changed: JobGroundChange[] = [];
  for (const ground of job.work.grounds) {
    const { bitId, routerId, mounting, woodId } = ground;
    const bit = yield* jobBit(bitId, at, policy);
    const known = yield* knownRouter(routerId, at, policy);
    const wood = woods.find(woodId);
    if (bit === undefined)
      changed.push({ code: "bit-gone", bitId, text: "The bit is no longer on the rack." });
    else if (known === undefined)
      changed.push({ code: "router-gone", routerId, text: "The router is no longer in the shop." });
    else {
      const { record } = bit;
      const outOfUse = record.retirement ?? record.hold;
      const elsewhere = whyElsewhere(bit, time);
      if (outOfUse !== undefined) {
        const state = record.retirement === undefined ? "held" : "retired";
        changed.push({
          code: "bit-out-of-use",
          bitId,
          text: `${record.name} is ${state}: ${outOfUse.reason}`,
        });
      } else if (elsewhere !== undefined) {
        changed.push({ code: "bit-elsewhere", bitId, text: `${record.name}: ${elsewhere}` });
      }
      if (wood === undefined) continue;
      const machine = { routerId, mounting, known };
      const { input } = asked({ bit, machine, wood, cut: ANY_CUT }, job, shop, mended.get(bitId));
      if (sealOf(input).digest !== ground.digest) {
        changed.push({ ...whatChanged(ground, record), bitId, routerId });
      }
    }
  }
  return onceEach(changed);
}

function whatChanged(
  { diameterMm, sharpenedAt }: JobGround,
  { name, form, sharpenedAt: sharpenedNow }: BitRecord,
): Pick<JobGroundChange, "code" | "text"> {
  if ((sharpenedNow ?? null) === sharpenedAt) {
    return { code: "figures-changed", text: `What is known of ${name} in this router has changed.` };
  }
  const { length } = showIn("both");
  const sizes =
    diameterMm === null ? "" : `: ${length(diameterMm)} before, ${length(formDiameterMm(form))} now`;
  return { code: "bit-sharpened", text: `${name} was sharpened${sizes}.` };
}

function onceEach(changes: readonly JobGroundChange[]): JobGroundChange[] {
  const first = new Map(changes.map((change) => [change.text, change]));
  return [...first.values()];
}
