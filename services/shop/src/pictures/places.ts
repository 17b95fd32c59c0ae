import { PICTURES, type PositionState, type RackPosition } from "@rimwise/drawing";
import { bareBit } from "../bits/bare.ts";
import { calledWithNumber } from "../bits/called.ts";
import type { BitRecord } from "../bits/schema.ts";
import type { App } from "../http/app-type.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { places } from "../places/reads.ts";
import type { PlaceRecord } from "../places/schema.ts";
import type { Question } from "../store/query.ts";
import { pictureRoute } from "./picture-route.ts";

/** More positions than this are no picture any more. */
const MOST_POSITIONS = 120;

export function placePictureRoutes(app: App, doors: Doors): void {
  pictureRoute(
    app,
    doors,
    {
      scope: "places:read",
      tag: "places",
      path: "/v1/places/:placeId/picture",
      operationId: "getPlacePicture",
      summary: "A place with the bits that belong there, to scale: what is out, held or missing",
      kinds: ["rack"],
    },
    ({ params: { placeId }, query: { units } }) =>
      doors.answer(
        (function* () {
          const place = requireFound(places.kind, placeId, yield* places.find(placeId));
          return PICTURES.rack.draw({ name: place.name, units, positions: yield* positionsIn(placeId) });
        })(),
      ),
  );
}

/** Every position in a place with the bits that belong there; a place that nothing belongs in is a position when nothing is inside it. */
function* positionsIn(placeId: string): Question<RackPosition[]> {
  const ids = yield* places.idsWithin(placeId);
  const belonging = new Map<string, BitRecord[]>();
  for (const bit of yield* places.bitsOf(ids, MOST_POSITIONS)) {
    const { homePlaceId, retirement } = bit;
    if (homePlaceId === undefined || retirement !== undefined) continue;
    belonging.set(homePlaceId, [...(belonging.get(homePlaceId) ?? []), bit]);
  }
  const shown: PlaceRecord[] = [];
  for (const id of ids) shown.push(requireFound(places.kind, id, yield* places.find(id)));
  const outer = new Set(shown.map(({ insideId }) => insideId));
  const positions: RackPosition[] = [];
  for (const place of shown) {
    const bits = belonging.get(place.id) ?? [];
    for (const bit of bits) positions.push(yield* positionOf(place, bit));
    if (bits.length === 0 && !outer.has(place.id)) positions.push({ label: place.name, state: "here" });
  }
  return positions.slice(0, MOST_POSITIONS);
}

function* positionOf({ name: label }: PlaceRecord, bit: BitRecord): Question<RackPosition> {
  return { label, bit: bareBit(bit), name: yield* calledWithNumber(bit), state: stateOf(bit) };
}

function stateOf({ state, missingSince, homePlaceId, placeId }: BitRecord): PositionState {
  if (state === "held") return "held";
  if (missingSince !== undefined) return "missing";
  return state === "in-rack" && placeId === homePlaceId ? "here" : "out";
}
