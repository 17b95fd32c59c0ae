// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import { changeOptions, type CallOptions, type Caller, type ChangeOptions, type Version, type WriteOptions } from "../operation.ts";
import type {
  CreateManyPlacesData,
  CreateManyPlacesResponse,
  CreatePlaceData,
  CreatePlaceResponse,
  DeletePlaceResponse,
  GetPlaceContentsResponse,
  GetPlaceLabelResponse,
  GetPlaceLabelsResponse,
  GetPlaceResponse,
  ListPlacesData,
  ListPlacesResponse,
  TakeStockData,
  TakeStockResponse,
  UpdatePlaceData,
  UpdatePlaceResponse,
} from "./types.gen.ts";

export function placesOf(caller: Caller) {
  return {
    /** A page to print with the labels of a place, of all places inside it, and of the bits that belong there */
    getPlaceLabels: (placeId: string, options?: CallOptions) =>
      caller.send<GetPlaceLabelsResponse>(
        { method: "GET", path: "/v1/places/{placeId}/labels", pathParameters: { placeId }, answers: ["text/html"] },
        options,
      ),

    /** A label to print for a place */
    getPlaceLabel: (placeId: string, options?: CallOptions) =>
      caller.send<GetPlaceLabelResponse>(
        { method: "GET", path: "/v1/places/{placeId}/label", pathParameters: { placeId }, answers: ["image/svg+xml"] },
        options,
      ),

    /** List the places of the shop */
    list: (query?: ListPlacesData["query"], options?: CallOptions) =>
      caller.list<ListPlacesResponse["data"][number]>(
        { method: "GET", path: "/v1/places", query },
        "cursor", options,
      ),

    /** Add a place */
    create: (body: CreatePlaceData["body"], options?: WriteOptions) =>
      caller.send<CreatePlaceResponse>(
        { method: "POST", path: "/v1/places", body, isWrite: true },
        options,
      ),

    /** Read a place */
    get: (placeId: string, options?: CallOptions) =>
      caller.send<GetPlaceResponse>(
        { method: "GET", path: "/v1/places/{placeId}", pathParameters: { placeId } },
        options,
      ),

    /** Change a place, or put it inside another */
    update: (placeId: string, body: UpdatePlaceData["body"], version: Version | ChangeOptions) =>
      caller.send<UpdatePlaceResponse>(
        { method: "PATCH", path: "/v1/places/{placeId}", pathParameters: { placeId }, body, isWrite: true },
        changeOptions(version),
      ),

    /** Remove a place that nothing is kept in */
    delete: (placeId: string, version: Version | ChangeOptions) =>
      caller.send<DeletePlaceResponse>(
        { method: "DELETE", path: "/v1/places/{placeId}", pathParameters: { placeId }, isWrite: true, answers: [] },
        changeOptions(version),
      ),

    /** What is in a place, what should be, and what is missing */
    getPlaceContents: (placeId: string, options?: CallOptions) =>
      caller.send<GetPlaceContentsResponse>(
        { method: "GET", path: "/v1/places/{placeId}/contents", pathParameters: { placeId } },
        options,
      ),

    /** Add many places at once, also inside one another */
    createMany: (body: CreateManyPlacesData["body"], options?: WriteOptions & { readonly query?: CreateManyPlacesData["query"] }) =>
      caller.send<CreateManyPlacesResponse>(
        { method: "POST", path: "/v1/places/batch", query: options?.query, body, isWrite: true },
        options,
      ),

    /** Report which bits were seen at a place; what should be there and was not is missing */
    takeStock: (placeId: string, body: TakeStockData["body"], options?: WriteOptions) =>
      caller.send<TakeStockResponse>(
        { method: "POST", path: "/v1/places/{placeId}/stock-takes", pathParameters: { placeId }, body, isWrite: true },
        options,
      ),
  };
}
