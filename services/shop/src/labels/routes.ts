import { formDiameterMm, showIn } from "@rimwise/domain";
import Type from "typebox";
import { BitPath } from "../bits/path.ts";
import type { BitReads } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import type { App } from "../http/app-type.ts";
import { requireFound } from "../http/record-routes.ts";
import type { PlaceReads } from "../places/reads.ts";
import { LABEL_ANSWER, labelSvg, SVG_TYPE } from "./label.ts";

type Parts = {
  readonly bits: BitReads;
  readonly places: PlaceReads;
  /** Where people's phones reach the service. */
  readonly publicUrl: string;
};

const PlacePath = Type.Object({ placeId: Type.String({ description: "Id of a place." }) });

export function labelRoutes(app: App, { bits, places, publicUrl }: Parts): void {
  app.get(
    "/v1/bits/:bitId/label",
    {
      config: { scope: "bits:read", operation: "act" },
      schema: {
        operationId: "getBitLabel",
        tags: ["bits"],
        summary: "A label to print for a bit",
        params: BitPath,
        response: LABEL_ANSWER,
      },
    },
    async (request, reply) => {
      const { bitId } = request.params;
      const bit = requireFound("bit", bitId, await bits.find(bitId));
      const url = `${publicUrl}/bits/${bit.id}`;
      return reply.type(SVG_TYPE).send(labelSvg({ url, title: bit.name, lines: linesOf(bit) }));
    },
  );

  app.get(
    "/v1/places/:placeId/label",
    {
      config: { scope: "places:read", operation: "act" },
      schema: {
        operationId: "getPlaceLabel",
        tags: ["places"],
        summary: "A label to print for a place",
        params: PlacePath,
        response: LABEL_ANSWER,
      },
    },
    async (request, reply) => {
      const { placeId } = request.params;
      const [place, ...outer] = await places.outward(placeId);
      const { id, name } = requireFound("place", placeId, place);
      const url = `${publicUrl}/places/${id}`;
      return reply
        .type(SVG_TYPE)
        .send(labelSvg({ url, title: name, lines: outer.map((each) => `in ${each.name}`) }));
    },
  );
}

function linesOf(bit: BitRecord): string[] {
  const metric = showIn("metric");
  const { markedMaxRpm, isHandFeedMarked } = bit;
  return [
    `Ø ${metric.length(formDiameterMm(bit.form))}`,
    `shank ${metric.length(bit.shankDiameterMm)}`,
    markedMaxRpm === undefined ? "no maximum marked" : `marked max ${metric.rotation(markedMaxRpm)}`,
    ...(isHandFeedMarked === undefined
      ? []
      : [isHandFeedMarked ? "marked for hand feed" : "not for hand feed"]),
  ];
}
