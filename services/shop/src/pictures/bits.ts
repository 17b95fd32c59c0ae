import { bitCeilings, bitFaults, DomainError } from "@rimwise/domain";
import { type DrawnUnits, PICTURES, type Scene } from "@rimwise/drawing";
import { bareBit } from "../bits/bare.ts";
import { bits } from "../bits/reads.ts";
import { type BitInput, BitInputSchema } from "../bits/schema.ts";
import type { App } from "../http/app-type.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { shopPolicy } from "../shop-policy/reads.ts";
import type { Question } from "../store/query.ts";
import { pictureRoute } from "./picture-route.ts";

export function bitPictureRoutes(app: App, doors: Doors): void {
  pictureRoute(
    app,
    doors,
    {
      scope: "bits:read",
      tag: "bits",
      path: "/v1/bits/:bitId/picture",
      operationId: "getBitPicture",
      summary: "A bit to scale, with its sizes and how fast its rim runs at the fastest it may turn",
      kinds: ["bit"],
    },
    ({ params: { bitId }, query: { units } }) =>
      doors.answer(
        (function* () {
          const record = requireFound(bits.kind, bitId, yield* bits.find(bitId));
          return yield* bitScene(bareBit(record), record.name, units);
        })(),
      ),
  );

  pictureRoute(
    app,
    doors,
    {
      scope: "plans:compute",
      tag: "bits",
      path: "/v1/bits/picture",
      operationId: "drawBit",
      summary: "The same of a bit that is not kept",
      kinds: ["bit"],
      body: BitInputSchema,
    },
    ({ body, query: { units } }) => doors.answer(bitScene(body, "", units)),
  );
}

/** The rim's speed is shown at the fastest that the bit may turn under the shop's policy. */
function* bitScene(bit: BitInput, name: string, units: DrawnUnits): Question<Scene> {
  const faults = bitFaults(bit);
  if (faults.length > 0) throw new DomainError(faults);
  const { hard, guide } = bitCeilings(bit, yield* shopPolicy());
  return PICTURES.bit.draw({ bit, name, units, rpm: Math.min(hard, guide) });
}
