// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import { changeOptions, type CallOptions, type Caller, type ChangeOptions, type Version, type WriteOptions } from "../operation.ts";
import type {
  CreateRouterData,
  CreateRouterResponse,
  DeleteRouterResponse,
  GetRouterResponse,
  ListRoutersData,
  ListRoutersResponse,
  UpdateRouterData,
  UpdateRouterResponse,
} from "./types.gen.ts";

export function routersOf(caller: Caller) {
  return {
    /** List the routers of the shop */
    list: (query?: ListRoutersData["query"], options?: CallOptions) =>
      caller.list<ListRoutersResponse["data"][number]>(
        { method: "GET", path: "/v1/routers", query },
        "cursor", options,
      ),

    /** Add a router */
    create: (body: CreateRouterData["body"], options?: WriteOptions) =>
      caller.send<CreateRouterResponse>(
        { method: "POST", path: "/v1/routers", body, isWrite: true },
        options,
      ),

    /** Read a router */
    get: (routerId: string, options?: CallOptions) =>
      caller.send<GetRouterResponse>(
        { method: "GET", path: "/v1/routers/{routerId}", pathParameters: { routerId } },
        options,
      ),

    /** Change a router */
    update: (routerId: string, body: UpdateRouterData["body"], version: Version | ChangeOptions) =>
      caller.send<UpdateRouterResponse>(
        { method: "PATCH", path: "/v1/routers/{routerId}", pathParameters: { routerId }, body, isWrite: true },
        changeOptions(version),
      ),

    /** Remove a router */
    delete: (routerId: string, version: Version | ChangeOptions) =>
      caller.send<DeleteRouterResponse>(
        { method: "DELETE", path: "/v1/routers/{routerId}", pathParameters: { routerId }, isWrite: true, answers: [] },
        changeOptions(version),
      ),
  };
}
