// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import { changeOptions, type CallOptions, type Caller, type ChangeOptions, type Version, type WriteOptions } from "../operation.ts";
import type {
  CreateManyPeopleData,
  CreateManyPeopleResponse,
  CreatePersonData,
  CreatePersonResponse,
  ErasePersonData,
  ErasePersonResponse,
  GetPersonResponse,
  ListPeopleData,
  ListPeopleResponse,
  UpdatePersonData,
  UpdatePersonResponse,
} from "./types.gen.ts";

export function peopleOf(caller: Caller) {
  return {
    /** List the people of the shop */
    list: (query?: ListPeopleData["query"], options?: CallOptions) =>
      caller.list<ListPeopleResponse["data"][number]>(
        { method: "GET", path: "/v1/people", query },
        "cursor", options,
      ),

    /** Enter somebody. A narrowed key enters people who are not in charge; to enter an instructor or a manager it must hold all that they will. */
    create: (body: CreatePersonData["body"], options?: WriteOptions) =>
      caller.send<CreatePersonResponse>(
        { method: "POST", path: "/v1/people", body, isWrite: true },
        options,
      ),

    /** Read a person */
    get: (personId: string, options?: CallOptions) =>
      caller.send<GetPersonResponse>(
        { method: "GET", path: "/v1/people/{personId}", pathParameters: { personId } },
        options,
      ),

    /** Change a person's name or role, or say that they have left. A change of role holds at once for every key of the person. A narrowed key gives nobody more than it holds. */
    update: (personId: string, body: UpdatePersonData["body"], version: Version | ChangeOptions) =>
      caller.send<UpdatePersonResponse>(
        { method: "PATCH", path: "/v1/people/{personId}", pathParameters: { personId }, body, isWrite: true },
        changeOptions(version),
      ),

    /** Enter many people at once, each with a key if asked. A key's secret is shown this once. To create keys with them needs the scope keys:manage too. A narrowed key gives no more than it holds. */
    createMany: (body: CreateManyPeopleData["body"], options?: WriteOptions & { readonly query?: CreateManyPeopleData["query"] }) =>
      caller.send<CreateManyPeopleResponse>(
        { method: "POST", path: "/v1/people/batch", query: options?.query, body, isWrite: true },
        options,
      ),

    /** Erase a person's name and notes for good; their keys end, and what they did stays under their id */
    erase: (personId: string, body: ErasePersonData["body"], options?: WriteOptions) =>
      caller.send<ErasePersonResponse>(
        { method: "POST", path: "/v1/people/{personId}/erase", pathParameters: { personId }, body, isWrite: true },
        options,
      ),
  };
}
