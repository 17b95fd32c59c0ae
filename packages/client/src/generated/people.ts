// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import { changeOptions, type AnyOptions, type CallOptions, type Caller, type ChangeOptions, type ConditionalOptions, type Loose, type RecordVersion, type WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { CreateManyPeopleData, CreatedPeople, ListPeopleData, NewPeople, NewPerson, Person, PersonChange, PersonErasure, Reason } from "./types.gen.ts";

/** Who uses the shop. */
export interface PeopleResource {
  /**
   * List the people of the shop
   *
   * `GET /v1/people`
   */
  list(query?: Loose<NonNullable<ListPeopleData["query"]>>, options?: CallOptions): Pages<Person>;

  /**
   * Enter somebody
   *
   * A narrowed key enters people who are not in charge; to enter an instructor or a manager it must hold all that they will.
   *
   * `POST /v1/people`
   */
  create(body: NewPerson, options?: WriteOptions): Answer<Person>;

  /**
   * Read a person
   *
   * `GET /v1/people/{personId}`
   */
  get(personId: string, options: ConditionalOptions): Answer<Person | NotModified>;
  /**
   * Read a person
   *
   * `GET /v1/people/{personId}`
   */
  get(personId: string, options?: CallOptions): Answer<Person>;

  /**
   * Change a person's name or role, or say that they have left
   *
   * A change of role holds at once for every key of the person. A narrowed key gives nobody more than it holds.
   *
   * `PATCH /v1/people/{personId}`
   */
  update(personId: string, body: PersonChange, version: RecordVersion | ChangeOptions): Answer<Person>;

  /**
   * Enter many people at once, each with a key if asked
   *
   * A key's secret is shown this once. To create keys with them needs the scope keys:manage too. A narrowed key gives no more than it holds.
   *
   * `POST /v1/people/batch`
   */
  createMany(body: NewPeople, options?: WriteOptions & { readonly query?: Loose<NonNullable<CreateManyPeopleData["query"]>> | undefined }): Answer<CreatedPeople>;

  /**
   * Erase a person's name and notes for good; their keys end, and what they did stays under their id
   *
   * `POST /v1/people/{personId}/erase`
   */
  erase(personId: string, body: Reason, options?: WriteOptions): Answer<PersonErasure>;
}

export function peopleOf(caller: Caller): PeopleResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/people", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/people", body }, options),
    get: (personId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/people/{}", ids: [personId] }, options),
    update: (personId, body, version) =>
      caller.send({ method: "PATCH", path: "/v1/people/{}", ids: [personId], body }, changeOptions(version)),
    createMany: (body, options) =>
      caller.send({ method: "POST", path: "/v1/people/batch", body }, options),
    erase: (personId, body, options) =>
      caller.send({ method: "POST", path: "/v1/people/{}/erase", ids: [personId], body }, options),
  };
}
