// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import { changeOptions, type AnyOptions, type CallOptions, type Caller, type ChangeOptions, type ConditionalOptions, type Loose, type Query, type RecordVersion, type StreamOptions, type WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { CreateManyPlacesData, CreatedPlaces, GetPlaceLabelsData, GetPlacePictureData, ListPlacesData, NewPlace, NewPlaces, Place, PlaceChange, PlaceContents, StockTake } from "./types.gen.ts";

/** Where bits are kept, what is there and what is missing. */
export interface PlacesResource {
  /**
   * Pages to print with the labels of a place, of all places inside it, and of the bits that belong there
   *
   * `GET /v1/places/{placeId}/labels`
   */
  labels(placeId: string, options: CallOptions & { readonly query?: Loose<NonNullable<GetPlaceLabelsData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * Pages to print with the labels of a place, of all places inside it, and of the bits that belong there
   *
   * `GET /v1/places/{placeId}/labels`
   */
  labels(placeId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<GetPlaceLabelsData["query"]>> | undefined }): Answer<Blob>;

  /**
   * A label to print for a place
   *
   * `GET /v1/places/{placeId}/label`
   */
  label(placeId: string, options: CallOptions & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * A label to print for a place
   *
   * `GET /v1/places/{placeId}/label`
   */
  label(placeId: string, options?: CallOptions): Answer<string>;

  /**
   * List the places of the shop
   *
   * `GET /v1/places`
   */
  list(query?: Loose<NonNullable<ListPlacesData["query"]>>, options?: CallOptions): Pages<Place>;

  /**
   * Add a place
   *
   * `POST /v1/places`
   */
  create(body: NewPlace, options?: WriteOptions): Answer<Place>;

  /**
   * Read a place
   *
   * `GET /v1/places/{placeId}`
   */
  get(placeId: string, options: ConditionalOptions): Answer<Place | NotModified>;
  /**
   * Read a place
   *
   * `GET /v1/places/{placeId}`
   */
  get(placeId: string, options?: CallOptions): Answer<Place>;

  /**
   * Change a place, or put it inside another
   *
   * `PATCH /v1/places/{placeId}`
   */
  update(placeId: string, body: PlaceChange, version: RecordVersion | ChangeOptions): Answer<Place>;

  /**
   * Remove a place that nothing is kept in
   *
   * `DELETE /v1/places/{placeId}`
   */
  delete(placeId: string, version: RecordVersion | ChangeOptions): Answer<void>;

  /**
   * What is in a place, what should be, and what is missing
   *
   * `GET /v1/places/{placeId}/contents`
   */
  contents(placeId: string, options?: CallOptions): Answer<PlaceContents>;

  /**
   * Add many places at once, also inside one another
   *
   * `POST /v1/places/batch`
   */
  createMany(body: NewPlaces, options?: WriteOptions & { readonly query?: Loose<NonNullable<CreateManyPlacesData["query"]>> | undefined }): Answer<CreatedPlaces>;

  /**
   * Report which bits were seen at a place; what should be there and was not is missing
   *
   * `POST /v1/places/{placeId}/stock-takes`
   */
  takeStock(placeId: string, body: StockTake, options?: WriteOptions): Answer<PlaceContents>;

  /**
   * A place with the bits that belong there, to scale: what is out, held or missing
   *
   * `GET /v1/places/{placeId}/picture`
   */
  picture(placeId: string, options: CallOptions & { readonly query?: Loose<NonNullable<GetPlacePictureData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * A place with the bits that belong there, to scale: what is out, held or missing
   *
   * `GET /v1/places/{placeId}/picture`
   */
  picture(placeId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<GetPlacePictureData["query"]>> | undefined }): Answer<Blob>;
}

export function placesOf(caller: Caller): PlacesResource {
  return {
    labels: (placeId: string, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/places/{}/labels", ids: [placeId], answers: ["application/pdf", "text/html"] }, options),
    label: (placeId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/places/{}/label", ids: [placeId], answers: ["image/svg+xml"] }, options),
    list: (query, options) =>
      caller.list({ path: "/v1/places", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/places", body }, options),
    get: (placeId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/places/{}", ids: [placeId] }, options),
    update: (placeId, body, version) =>
      caller.send({ method: "PATCH", path: "/v1/places/{}", ids: [placeId], body }, changeOptions(version)),
    delete: (placeId, version) =>
      caller.send({ method: "DELETE", path: "/v1/places/{}", ids: [placeId], answers: [] }, changeOptions(version)),
    contents: (placeId, options) =>
      caller.send({ path: "/v1/places/{}/contents", ids: [placeId] }, options),
    createMany: (body, options) =>
      caller.send({ method: "POST", path: "/v1/places/batch", body }, options),
    takeStock: (placeId, body, options) =>
      caller.send({ method: "POST", path: "/v1/places/{}/stock-takes", ids: [placeId], body }, options),
    picture: (placeId: string, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/places/{}/picture", ids: [placeId], answers: ["image/svg+xml", "image/png"] }, options),
  };
}
