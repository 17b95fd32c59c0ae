// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import { changeOptions, type AnyOptions, type CallOptions, type Caller, type ChangeOptions, type ConditionalOptions, type Loose, type Query, type RecordVersion, type StreamOptions, type WriteOptions } from "../operation.ts";
import type { Pages } from "../pages.ts";
import type { NotModified } from "../read.ts";
import type { DrawProfileData, GetProfilePictureData, ListProfilesData, NewProfile, NewProfileMaking, Profile, ProfileChange, ProfileFound, ProfileSearch } from "./types.gen.ts";

/** The shop's own profiles, and which bits make one. */
export interface ProfilesResource {
  /**
   * List the shop's own profiles
   *
   * `GET /v1/profiles`
   */
  list(query?: Loose<NonNullable<ListProfilesData["query"]>>, options?: CallOptions): Pages<Profile>;

  /**
   * Keep a profile
   *
   * `POST /v1/profiles`
   */
  create(body: NewProfile, options?: WriteOptions): Answer<Profile>;

  /**
   * Read a profile
   *
   * `GET /v1/profiles/{profileId}`
   */
  get(profileId: string, options: ConditionalOptions): Answer<Profile | NotModified>;
  /**
   * Read a profile
   *
   * `GET /v1/profiles/{profileId}`
   */
  get(profileId: string, options?: CallOptions): Answer<Profile>;

  /**
   * Change a profile
   *
   * `PATCH /v1/profiles/{profileId}`
   */
  update(profileId: string, body: ProfileChange, version: RecordVersion | ChangeOptions): Answer<Profile>;

  /**
   * Keep where a profile was made, and with what settings
   *
   * `POST /v1/profiles/{profileId}/made`
   */
  log(profileId: string, body: NewProfileMaking, options?: WriteOptions): Answer<Profile>;

  /**
   * Which bits of the rack make a profile: alone, or the fewest together
   *
   * Nothing that must stay is ever cut into. What doubles back is asked for by its form. With a machine, each setting is planned.
   *
   * `POST /v1/profiles/search`
   */
  search(body: ProfileSearch, options?: CallOptions): Answer<ProfileFound>;

  /**
   * A profile of the library in section
   *
   * `GET /v1/profiles/{profileId}/picture`
   */
  picture(profileId: string, options: CallOptions & { readonly query?: Loose<NonNullable<GetProfilePictureData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * A profile of the library in section
   *
   * `GET /v1/profiles/{profileId}/picture`
   */
  picture(profileId: string, options?: CallOptions & { readonly query?: Loose<NonNullable<GetProfilePictureData["query"]>> | undefined }): Answer<Blob>;

  /**
   * A profile in section, with the share of each set-up of the best answer that the rack gives
   *
   * `POST /v1/profiles/picture`
   */
  draw(body: ProfileSearch, options: CallOptions & { readonly query?: Loose<NonNullable<DrawProfileData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * A profile in section, with the share of each set-up of the best answer that the rack gives
   *
   * `POST /v1/profiles/picture`
   */
  draw(body: ProfileSearch, options?: CallOptions & { readonly query?: Loose<NonNullable<DrawProfileData["query"]>> | undefined }): Answer<Blob>;
}

export function profilesOf(caller: Caller): ProfilesResource {
  return {
    list: (query, options) =>
      caller.list({ path: "/v1/profiles", query }, options),
    create: (body, options) =>
      caller.send({ method: "POST", path: "/v1/profiles", body }, options),
    get: (profileId: string, options?: AnyOptions) =>
      caller.send<never>({ path: "/v1/profiles/{}", ids: [profileId] }, options),
    update: (profileId, body, version) =>
      caller.send({ method: "PATCH", path: "/v1/profiles/{}", ids: [profileId], body }, changeOptions(version)),
    log: (profileId, body, options) =>
      caller.send({ method: "POST", path: "/v1/profiles/{}/made", ids: [profileId], body }, options),
    search: (body, options) =>
      caller.send({ method: "POST", path: "/v1/profiles/search", body, isQuestion: true }, options),
    picture: (profileId: string, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ path: "/v1/profiles/{}/picture", ids: [profileId], answers: ["image/svg+xml", "image/png"] }, options),
    draw: (body: ProfileSearch, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ method: "POST", path: "/v1/profiles/picture", body, isQuestion: true, answers: ["image/svg+xml", "image/png"] }, options),
  };
}
