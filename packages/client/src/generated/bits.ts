// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import { changeOptions, type AnyOptions, type CallOptions, type Caller, type ChangeOptions, type ConditionalOptions, type FileBody, type Loose, type Query, type RecordVersion, type StreamOptions, type WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { Bit, BitChange, BitInput, BitNumber, BitRetirement, DrawBitData, EdgeLife, ExportBitsData, GetBitLabelsData, GetBitPictureData, HeldBit, ImportBitsData, ImportReport, ListBitsData, NewBit, Reason } from "./types.gen.ts";

/** The rack of router bits. */
export interface BitsResource {
  /**
   * List or search the bits on the rack; every filter combines
   *
   * `GET /v1/bits`
   */
  list(query?: Loose<NonNullable<ListBitsData["query"]>>, options?: CallOptions): Pages<Bit>;

  /**
   * Put a bit on the rack
   *
   * `POST /v1/bits`
   */
  create(body: NewBit, options?: WriteOptions): Answer<Bit>;

  /**
   * Read a bit
   *
   * `GET /v1/bits/{bitId}`
   */
  get(bitId: string, options: ConditionalOptions): Answer<Bit | NotModified>;
  /**
   * Read a bit
   *
   * `GET /v1/bits/{bitId}`
   */
  get(bitId: string, options?: CallOptions): Answer<Bit>;

  /**
   * Change a bit
   *
   * `PATCH /v1/bits/{bitId}`
   */
  update(bitId: string, body: BitChange, version: RecordVersion | ChangeOptions): Answer<Bit>;

  /**
   * Take a bit off the rack; one that is on loan must come back first
   *
   * `DELETE /v1/bits/{bitId}`
   */
  delete(bitId: string, version: RecordVersion | ChangeOptions): Answer<void>;

  /**
   * The short number that the shop knows a bit by
   *
   * `GET /v1/bits/{bitId}/number`
   */
  number(bitId: string, options?: CallOptions): Answer<BitNumber>;

  /**
   * Take a bit out of use until somebody in charge has looked at it; anybody may
   *
   * A bit that is held already stays held for its first reason, unless somebody in charge says another. Whoever is not in charge holds as many in a day as the policy's holdsPerDayMax says; GET /v1/stock/held shows who held what.
   *
   * `POST /v1/bits/{bitId}/hold`
   */
  hold(bitId: string, body: Reason, options?: WriteOptions): Answer<HeldBit>;

  /**
   * Let a held bit be used again, after an inspection made since it was held
   *
   * `POST /v1/bits/{bitId}/release`
   */
  release(bitId: string, body: Reason, options?: WriteOptions): Answer<Bit>;

  /**
   * Take a bit out of use for good, or say that a retired one has been replaced
   *
   * `POST /v1/bits/{bitId}/retire`
   */
  retire(bitId: string, body: BitRetirement, options?: WriteOptions): Answer<Bit>;

  /**
   * Send a bit away to be sharpened
   *
   * `POST /v1/bits/{bitId}/send-to-sharpening`
   */
  sendToSharpening(bitId: string, options?: WriteOptions): Answer<Bit>;

  /**
   * A label to print for a bit
   *
   * `GET /v1/bits/{bitId}/label`
   */
  label(bitId: string, options: CallOptions & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * A label to print for a bit
   *
   * `GET /v1/bits/{bitId}/label`
   */
  label(bitId: string, options?: CallOptions): Answer<string>;

  /**
   * Pages to print with the labels of some bits
   *
   * `GET /v1/bits/labels`
   */
  labels(options: CallOptions & { readonly query?: Loose<NonNullable<GetBitLabelsData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * Pages to print with the labels of some bits
   *
   * `GET /v1/bits/labels`
   */
  labels(options?: CallOptions & { readonly query?: Loose<NonNullable<GetBitLabelsData["query"]>> | undefined }): Answer<Blob>;

  /**
   * Export every bit as a file that imports again
   *
   * A file holds what can be said of a bit, not what its history made of it: its state, hold, loan, place and use are no part of it, and stay as they are. The columns of a CSV, in any order: id, name, kind, diameterMm, cuttingLengthMm, upCutLengthMm, bearing, pilotDiameterMm, pilotHeightMm, slotWidthMm, arborLengthMm, arborDiameterMm, angleDeg, radiusMm, filletMm, landMm, curve, profileHeightMm, headHeightMm, neckDiameterMm, tongueThicknessMm, tongueLengthMm, pilot, grooveWidthMm, grooveDepthMm, backCutterLengthMm, lockDepthMm, stepMm, stepHeightMm, fingers, fingerHeightMm, fingerDepthMm, taperDeg, face, tongueWidthMm, shoulderHeightMm, backCutterDiameterMm, backCutterHeightMm, faceWidthMm, faceDepthMm, startRadiusMm, segments, shankDiameterMm, wings, massG, runOutMm, stickOutMm, isEndCutting, markedMaxRpm, isHandFeedMarked, toothMaterial, purchasedOn, costAmount, costCurrency, smallestUsableDiameterMm, homePlaceId, inspectionIntervalDays, inspectionIntervalM, setName, externalId, notes. A line of NDJSON is a NewBit, with its `id` if it has one. Numbers are in full precision. Before what a spreadsheet would take for a formula, at the start of a text or after a semicolon, tab or line end in it, stands an apostrophe, which the import takes away.
   *
   * `GET /v1/bits/export`
   */
  export(options: CallOptions & { readonly query?: Loose<NonNullable<ExportBitsData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * Export every bit as a file that imports again
   *
   * A file holds what can be said of a bit, not what its history made of it: its state, hold, loan, place and use are no part of it, and stay as they are. The columns of a CSV, in any order: id, name, kind, diameterMm, cuttingLengthMm, upCutLengthMm, bearing, pilotDiameterMm, pilotHeightMm, slotWidthMm, arborLengthMm, arborDiameterMm, angleDeg, radiusMm, filletMm, landMm, curve, profileHeightMm, headHeightMm, neckDiameterMm, tongueThicknessMm, tongueLengthMm, pilot, grooveWidthMm, grooveDepthMm, backCutterLengthMm, lockDepthMm, stepMm, stepHeightMm, fingers, fingerHeightMm, fingerDepthMm, taperDeg, face, tongueWidthMm, shoulderHeightMm, backCutterDiameterMm, backCutterHeightMm, faceWidthMm, faceDepthMm, startRadiusMm, segments, shankDiameterMm, wings, massG, runOutMm, stickOutMm, isEndCutting, markedMaxRpm, isHandFeedMarked, toothMaterial, purchasedOn, costAmount, costCurrency, smallestUsableDiameterMm, homePlaceId, inspectionIntervalDays, inspectionIntervalM, setName, externalId, notes. A line of NDJSON is a NewBit, with its `id` if it has one. Numbers are in full precision. Before what a spreadsheet would take for a formula, at the start of a text or after a semicolon, tab or line end in it, stands an apostrophe, which the import takes away.
   *
   * `GET /v1/bits/export`
   */
  export(options?: CallOptions & { readonly query?: Loose<NonNullable<ExportBitsData["query"]>> | undefined }): Answer<string>;

  /**
   * Import bits from a file
   *
   * A file holds what can be said of a bit, not what its history made of it: its state, hold, loan, place and use are no part of it, and stay as they are. The columns of a CSV, in any order: id, name, kind, diameterMm, cuttingLengthMm, upCutLengthMm, bearing, pilotDiameterMm, pilotHeightMm, slotWidthMm, arborLengthMm, arborDiameterMm, angleDeg, radiusMm, filletMm, landMm, curve, profileHeightMm, headHeightMm, neckDiameterMm, tongueThicknessMm, tongueLengthMm, pilot, grooveWidthMm, grooveDepthMm, backCutterLengthMm, lockDepthMm, stepMm, stepHeightMm, fingers, fingerHeightMm, fingerDepthMm, taperDeg, face, tongueWidthMm, shoulderHeightMm, backCutterDiameterMm, backCutterHeightMm, faceWidthMm, faceDepthMm, startRadiusMm, segments, shankDiameterMm, wings, massG, runOutMm, stickOutMm, isEndCutting, markedMaxRpm, isHandFeedMarked, toothMaterial, purchasedOn, costAmount, costCurrency, smallestUsableDiameterMm, homePlaceId, inspectionIntervalDays, inspectionIntervalM, setName, externalId, notes. A line of NDJSON is a NewBit, with its `id` if it has one. Quantities are written as people write them ("3-1/2 in", "88.9 mm", "8,5 mm", "12 oz", "22,000 rpm"); a number alone is in the unit of its column's name, and what may mean two things is refused. Commas, semicolons or tabs part the cells of a CSV. A dry run shows every quantity as it was read, and is answered as the import would be: a file that is refused is a 422 with the report. A row with the `id` of a kept bit makes it what the row says, except for what has no column; one with another `id` makes a bit of that id; one without makes a new bit. UTF-8, up to 32 MiB, each row at most 64 KiB and 300 cells, and few empty rows. Importing an unchanged export changes nothing.
   *
   * `POST /v1/bits/import`
   */
  import(file: FileBody<"text/csv" | "application/x-ndjson">, options?: WriteOptions & { readonly query?: Loose<NonNullable<ImportBitsData["query"]>> | undefined }): Answer<ImportReport>;

  /**
   * Estimate what is left of a bit's edge
   *
   * `GET /v1/bits/{bitId}/edge`
   */
  edge(bitId: string, options?: CallOptions): Answer<EdgeLife>;

  /**
   * A bit to scale, with its sizes and how fast its rim runs at the fastest it may turn
   *
   * `GET /v1/bits/{bitId}/picture`
   */
  picture(bitId: string, options: CallOptions & { readonly query?: Loose<NonNullable<GetBitPictureData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * A bit to scale, with its sizes and how fast its rim runs at the fastest it may turn
   *
   * `GET /v1/bits/{bitId}/picture`
   */
  picture(bitId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<GetBitPictureData["query"]>> | undefined }): Answer<Blob>;

  /**
   * The same of a bit that is not kept
   *
   * `POST /v1/bits/picture`
   */
  draw(body: BitInput, options: CallOptions & { readonly query?: Loose<NonNullable<DrawBitData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * The same of a bit that is not kept
   *
   * `POST /v1/bits/picture`
   */
  draw(body: BitInput, options?: CallOptions & { readonly query?: Loose<NonNullable<DrawBitData["query"]>> | undefined }): Answer<Blob>;
}

export function bitsOf(caller: Caller): BitsResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/bits", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/bits", body }, options),
    get: (bitId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/bits/{}", ids: [bitId] }, options),
    update: (bitId, body, version) =>
      caller.send({ method: "PATCH", path: "/v1/bits/{}", ids: [bitId], body }, changeOptions(version)),
    delete: (bitId, version) =>
      caller.send({ method: "DELETE", path: "/v1/bits/{}", ids: [bitId], answers: [] }, changeOptions(version)),
    number: (bitId, options) =>
      caller.send({ path: "/v1/bits/{}/number", ids: [bitId] }, options),
    hold: (bitId, body, options) =>
      caller.send({ method: "POST", path: "/v1/bits/{}/hold", ids: [bitId], body }, options),
    release: (bitId, body, options) =>
      caller.send({ method: "POST", path: "/v1/bits/{}/release", ids: [bitId], body }, options),
    retire: (bitId, body, options) =>
      caller.send({ method: "POST", path: "/v1/bits/{}/retire", ids: [bitId], body }, options),
    sendToSharpening: (bitId, options) =>
      caller.send({ method: "POST", path: "/v1/bits/{}/send-to-sharpening", ids: [bitId] }, options),
    label: (bitId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/bits/{}/label", ids: [bitId], answers: ["image/svg+xml"] }, options),
    labels: (options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/bits/labels", answers: ["application/pdf", "text/html"] }, options),
    export: (options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/bits/export", answers: ["text/csv", "application/x-ndjson"] }, options),
    import: (file, options) =>
      caller.send({ method: "POST", path: "/v1/bits/import", ...file }, options),
    edge: (bitId, options) =>
      caller.send({ path: "/v1/bits/{}/edge", ids: [bitId] }, options),
    picture: (bitId: string, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/bits/{}/picture", ids: [bitId], answers: ["image/svg+xml", "image/png"] }, options),
    draw: (body: BitInput, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ method: "POST", path: "/v1/bits/picture", body, isQuestion: true, answers: ["image/svg+xml", "image/png"] }, options),
  };
}
