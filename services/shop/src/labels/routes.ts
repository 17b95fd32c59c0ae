import { formDiameterMm, mountingTitle, showIn } from "@rimwise/domain";
import Type from "typebox";
import { bits } from "../bits/reads.ts";
import type { BitRecord } from "../bits/schema.ts";
import type { App } from "../http/app-type.ts";
import { idList } from "../http/identity-filters.ts";
import { namedInQuery } from "../http/named-records.ts";
import { requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { places } from "../places/reads.ts";
import { routers } from "../routers/kind.ts";
import type { RouterRecord } from "../routers/schema.ts";
import type { Question } from "../store/query.ts";
import type { CodedLabel } from "./label.ts";
import { labelRoute } from "./label-route.ts";
import { labelSheetRoute } from "./sheet-route.ts";

const IdsQuery = Type.Object({ ids: idList });

/** Bits of one sheet: a room's. */
const MOST_BITS = 2000;

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
      return yield* bitLabel(bit, publicUrl);
    },
  );

  labelSheetRoute(
    app,
    doors,
    {
      scope: "bits:read",
      tag: "bits",
      path: "/v1/bits/labels",
      operationId: "getBitLabels",
      summary: "Pages to print with the labels of some bits",
      query: IdsQuery,
    },
    function* ({ query: { ids } }) {
      const labels: CodedLabel[] = [];
      for (const bit of yield* namedInQuery(ids, bits)) labels.push(yield* bitLabel(bit, publicUrl));
      return { title: "Bits", labels };
    },
  );

  labelSheetRoute(
    app,
    doors,
    {
      scope: "routers:read",
      tag: "routers",
      path: "/v1/routers/labels",
      operationId: "getRouterLabels",
      summary: "Pages to print with the labels of some routers",
      query: IdsQuery,
    },
    function* ({ query: { ids } }) {
      return { title: "Routers", labels: (yield* namedInQuery(ids, routers)).map(routerLabel) };
    },
  );

  labelSheetRoute(
    app,
    doors,
    {
      scope: "places:read",
      tag: "places",
      path: "/v1/places/:placeId/labels",
      operationId: "getPlaceLabels",
      summary:
        "Pages to print with the labels of a place, of all places inside it, and of the bits that belong there",
    },
    function* ({ params: { placeId } }) {
      const outermost = requireFound(places.kind, placeId, yield* places.find(placeId));
      const within = yield* places.idsWithin(placeId);
      const labels: CodedLabel[] = [];
      for (const id of within) labels.push(yield* placeLabel(id, publicUrl));
      const inside = new Set(within);
      const kept = yield* places.bitsOf(within, MOST_BITS);
      for (const bit of kept) {
        if (bit.retirement === undefined && inside.has(bit.homePlaceId ?? ""))
          labels.push(yield* bitLabel(bit, publicUrl));
      }
      return { title: outermost.name, labels };
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
    ({ params: { placeId } }) => placeLabel(placeId, publicUrl),
  );
}

function routerLabel({ name, minRpm, maxRpm, dial, colletDiametersMm, mountings }: RouterRecord): CodedLabel {
  const metric = showIn("metric");
  const marks = dial && `marks ${metric.mark(dial.marks.first)} to ${metric.mark(dial.marks.last)}`;
  const collets = colletDiametersMm && `collets ${colletDiametersMm.map(metric.length).join(", ")}`;
  return {
    title: name,
    lines: [
      marks ?? "no dial",
      minRpm === maxRpm
        ? metric.rotation(minRpm)
        : `${metric.rotation(minRpm)} to ${metric.rotation(maxRpm)} by its plate`,
      collets ?? "collets not known",
      ...(mountings === undefined ? [] : [mountings.map(mountingTitle).join(" or ")]),
    ],
  };
}

function* placeLabel(placeId: string, publicUrl: string): Question<CodedLabel> {
  const [place, ...outer] = yield* places.outward(placeId);
  const { id, name } = requireFound(places.kind, placeId, place);
  return { url: `${publicUrl}/places/${id}`, title: name, lines: outer.map((each) => `in ${each.name}`) };
}

function* bitLabel(bit: BitRecord, publicUrl: string): Question<CodedLabel> {
  const number = yield* bits.shopNumberOf(bit.id);
  const called = number === undefined ? {} : { number: `No. ${number}` };
  return { url: `${publicUrl}/bits/${bit.id}`, ...called, title: bit.name, lines: linesOf(bit) };
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
