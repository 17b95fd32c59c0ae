import { formDiameterMm, showIn } from "@rimwise/domain";
import { bits } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import type { App } from "../http/app-type.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { places } from "../places/reads.ts";
import { labelRoute } from "./label-route.ts";

/** `publicUrl` is where people's phones reach the service. */
export function labelRoutes(app: App, doors: Doors, publicUrl: string): void {
  labelRoute(
    app,
    doors,
    {
      scope: "bits:read",
      tag: "bits",
      path: "/v1/bits/:bitId/label",
      operationId: "getBitLabel",
      summary: "A label to print for a bit",
    },
    function* ({ params: { bitId } }) {
      const bit = requireFound(bits.kind, bitId, yield* bits.find(bitId));
      return { url: `${publicUrl}/bits/${bit.id}`, title: bit.name, lines: linesOf(bit) };
    },
  );

  labelRoute(
    app,
    doors,
    {
      scope: "places:read",
      tag: "places",
      path: "/v1/places/:placeId/label",
      operationId: "getPlaceLabel",
      summary: "A label to print for a place",
    },
    function* ({ params: { placeId } }) {
      const [place, ...outer] = yield* places.outward(placeId);
      const { id, name } = requireFound(places.kind, placeId, place);
      return {
        url: `${publicUrl}/places/${id}`,
        title: name,
        lines: outer.map((each) => `in ${each.name}`),
      };
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
