// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import { changeOptions, type CallOptions, type Caller, type ChangeOptions, type FileBody, type Version, type WriteOptions } from "../operation.ts";
import type {
  CreateBitData,
  CreateBitResponse,
  DeleteBitResponse,
  ExportBitsData,
  ExportBitsResponse,
  GetBitLabelResponse,
  GetBitResponse,
  HoldBitData,
  HoldBitResponse,
  ImportBitsData,
  ImportBitsResponse,
  ListBitsData,
  ListBitsResponse,
  ReleaseBitData,
  ReleaseBitResponse,
  RetireBitData,
  RetireBitResponse,
  SendBitToSharpeningResponse,
  UpdateBitData,
  UpdateBitResponse,
} from "./types.gen.ts";

export function bitsOf(caller: Caller) {
  return {
    /** List or search the bits on the rack; every filter combines */
    list: (query?: ListBitsData["query"], options?: CallOptions) =>
      caller.list<ListBitsResponse["data"][number]>(
        { method: "GET", path: "/v1/bits", query },
        "cursor", options,
      ),

    /** Put a bit on the rack */
    create: (body: CreateBitData["body"], options?: WriteOptions) =>
      caller.send<CreateBitResponse>(
        { method: "POST", path: "/v1/bits", body, isWrite: true },
        options,
      ),

    /** Read a bit */
    get: (bitId: string, options?: CallOptions) =>
      caller.send<GetBitResponse>(
        { method: "GET", path: "/v1/bits/{bitId}", pathParameters: { bitId } },
        options,
      ),

    /** Change a bit */
    update: (bitId: string, body: UpdateBitData["body"], version: Version | ChangeOptions) =>
      caller.send<UpdateBitResponse>(
        { method: "PATCH", path: "/v1/bits/{bitId}", pathParameters: { bitId }, body, isWrite: true },
        changeOptions(version),
      ),

    /** Take a bit off the rack; one that is on loan must come back first */
    delete: (bitId: string, version: Version | ChangeOptions) =>
      caller.send<DeleteBitResponse>(
        { method: "DELETE", path: "/v1/bits/{bitId}", pathParameters: { bitId }, isWrite: true, answers: [] },
        changeOptions(version),
      ),

    /** Take a bit out of use until somebody in charge has looked at it; anybody may. A bit that is held already stays held for its first reason, unless somebody in charge says another. Whoever is not in charge holds as many in a day as the policy's holdsPerDayMax says; GET /v1/stock/held shows who held what. */
    hold: (bitId: string, body: HoldBitData["body"], options?: WriteOptions) =>
      caller.send<HoldBitResponse>(
        { method: "POST", path: "/v1/bits/{bitId}/hold", pathParameters: { bitId }, body, isWrite: true },
        options,
      ),

    /** Let a held bit be used again, after an inspection made since it was held */
    release: (bitId: string, body: ReleaseBitData["body"], options?: WriteOptions) =>
      caller.send<ReleaseBitResponse>(
        { method: "POST", path: "/v1/bits/{bitId}/release", pathParameters: { bitId }, body, isWrite: true },
        options,
      ),

    /** Take a bit out of use for good, or say that a retired one has been replaced */
    retire: (bitId: string, body: RetireBitData["body"], options?: WriteOptions) =>
      caller.send<RetireBitResponse>(
        { method: "POST", path: "/v1/bits/{bitId}/retire", pathParameters: { bitId }, body, isWrite: true },
        options,
      ),

    /** Send a bit away to be sharpened */
    sendBitToSharpening: (bitId: string, options?: WriteOptions) =>
      caller.send<SendBitToSharpeningResponse>(
        { method: "POST", path: "/v1/bits/{bitId}/send-to-sharpening", pathParameters: { bitId }, isWrite: true },
        options,
      ),

    /** A label to print for a bit */
    getBitLabel: (bitId: string, options?: CallOptions) =>
      caller.send<GetBitLabelResponse>(
        { method: "GET", path: "/v1/bits/{bitId}/label", pathParameters: { bitId }, answers: ["image/svg+xml"] },
        options,
      ),

    /** Export every bit as a file that imports again. A file holds what can be said of a bit, not what its history made of it: its state, hold, loan, place and use are no part of it, and stay as they are. The columns of a CSV, in any order: id, name, kind, diameterMm, cuttingLengthMm, upCutLengthMm, bearing, pilotDiameterMm, pilotHeightMm, slotWidthMm, arborLengthMm, arborDiameterMm, angleDeg, radiusMm, filletMm, landMm, curve, profileHeightMm, headHeightMm, neckDiameterMm, tongueThicknessMm, tongueLengthMm, pilot, grooveWidthMm, grooveDepthMm, backCutterLengthMm, lockDepthMm, stepMm, stepHeightMm, fingers, fingerHeightMm, fingerDepthMm, taperDeg, face, tongueWidthMm, shoulderHeightMm, backCutterDiameterMm, backCutterHeightMm, faceWidthMm, faceDepthMm, startRadiusMm, segments, shankDiameterMm, wings, massG, runOutMm, stickOutMm, isEndCutting, markedMaxRpm, isHandFeedMarked, toothMaterial, purchasedOn, costAmount, costCurrency, smallestUsableDiameterMm, homePlaceId, inspectionIntervalDays, inspectionIntervalM, externalId, notes. A line of NDJSON is a NewBit, with its `id` if it has one. Numbers are in full precision. Before what a spreadsheet would take for a formula, at the start of a text or after a semicolon, tab or line end in it, stands an apostrophe, which the import takes away. */
    export: (options?: CallOptions & { readonly query?: ExportBitsData["query"] }) =>
      caller.send<ExportBitsResponse>(
        { method: "GET", path: "/v1/bits/export", query: options?.query, answers: ["text/csv", "application/x-ndjson"] },
        options,
      ),

    /** Import bits from a file. A file holds what can be said of a bit, not what its history made of it: its state, hold, loan, place and use are no part of it, and stay as they are. The columns of a CSV, in any order: id, name, kind, diameterMm, cuttingLengthMm, upCutLengthMm, bearing, pilotDiameterMm, pilotHeightMm, slotWidthMm, arborLengthMm, arborDiameterMm, angleDeg, radiusMm, filletMm, landMm, curve, profileHeightMm, headHeightMm, neckDiameterMm, tongueThicknessMm, tongueLengthMm, pilot, grooveWidthMm, grooveDepthMm, backCutterLengthMm, lockDepthMm, stepMm, stepHeightMm, fingers, fingerHeightMm, fingerDepthMm, taperDeg, face, tongueWidthMm, shoulderHeightMm, backCutterDiameterMm, backCutterHeightMm, faceWidthMm, faceDepthMm, startRadiusMm, segments, shankDiameterMm, wings, massG, runOutMm, stickOutMm, isEndCutting, markedMaxRpm, isHandFeedMarked, toothMaterial, purchasedOn, costAmount, costCurrency, smallestUsableDiameterMm, homePlaceId, inspectionIntervalDays, inspectionIntervalM, externalId, notes. A line of NDJSON is a NewBit, with its `id` if it has one. Quantities are written as people write them ("3-1/2 in", "88.9 mm", "8,5 mm", "12 oz", "22,000 rpm"); a number alone is in the unit of its column's name, and what may mean two things is refused. Commas, semicolons or tabs part the cells of a CSV. A dry run shows every quantity as it was read, and is answered as the import would be: a file that is refused is a 422 with the report. A row with the `id` of a kept bit makes it what the row says, except for what has no column; one with another `id` makes a bit of that id; one without makes a new bit. UTF-8, up to 32 MiB, each row at most 64 KiB and 300 cells, and few empty rows. Importing an unchanged export changes nothing. */
    import: (file: FileBody<"text/csv" | "application/x-ndjson">, options?: WriteOptions & { readonly query?: ImportBitsData["query"] }) =>
      caller.send<ImportBitsResponse>(
        { method: "POST", path: "/v1/bits/import", query: options?.query, ...file, isWrite: true },
        options,
      ),
  };
}
