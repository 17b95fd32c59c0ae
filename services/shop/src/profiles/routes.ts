import { bits } from "../bits/reads.ts";
import type { Admit } from "../http/admission.ts";
import type { App } from "../http/app-type.ts";
import { requireNamed } from "../http/named-records.ts";
import { listRecordsRoute, readRoute } from "../http/read-routes.ts";
import { ref } from "../http/reference.ts";
import { askedOf, type Doors, schemaOf } from "../http/routes.ts";
import { turnsOf } from "../http/turns.ts";
import { actRoute, changeRoute, createRoute } from "../http/write-routes.ts";
import { routers } from "../routers/kind.ts";
import { newId } from "../store/id.ts";
import { changeProfile, keepProfile, profileMade } from "./decide.ts";
import { profileKind, profiles } from "./kind.ts";
import {
  NewProfileSchema,
  PROFILE_SCHEMAS,
  ProfileChangeSchema,
  ProfileMakingSchema,
  ProfilePageSchema,
  ProfileSchema,
} from "./schema.ts";
import { searchFor } from "./search.ts";
import {
  ProfileFoundSchema,
  type ProfileSearchAsked,
  ProfileSearchSchema,
  SEARCH_SCHEMAS,
} from "./search-schema.ts";

const READ = { scope: "plans:read", tag: "profiles", of: profiles } as const;
const WRITE = { scope: "plans:write", tag: "profiles", of: profiles, answer: ProfileSchema } as const;

/** Register after the plans: their codes are part of the answers. */
export function profileRoutes(app: App, doors: Doors, admit: Admit): void {
  for (const schema of [...PROFILE_SCHEMAS, ...SEARCH_SCHEMAS]) app.addSchema(schema);

  listRecordsRoute(app, doors, {
    ...READ,
    path: "/v1/profiles",
    operationId: "listProfiles",
    summary: "List the shop's own profiles",
    page: ProfilePageSchema,
  });

  readRoute(app, doors, {
    ...READ,
    path: "/v1/profiles/:profileId",
    operationId: "getProfile",
    summary: "Read a profile",
  });

  createRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/profiles",
      operationId: "createProfile",
      summary: "Keep a profile",
      body: NewProfileSchema,
    },
    ({ body, at }) => {
      const { record, changes } = keepProfile(newId(profileKind.idPrefix), body, at);
      return { changes, answer: record };
    },
  );

  changeRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/profiles/:profileId",
      operationId: "updateProfile",
      summary: "Change a profile",
      body: ProfileChangeSchema,
    },
    (current, { body, at }) => {
      const { record, changes } = changeProfile(current, body, at);
      return { changes, answer: record };
    },
  );

  actRoute(
    app,
    doors,
    {
      ...WRITE,
      path: "/v1/profiles/:profileId/made",
      operationId: "logProfile",
      summary: "Keep where a profile was made, and with what settings",
      body: ProfileMakingSchema,
    },
    function* (current, { body, at }) {
      yield* requireNamed(
        body.settings.flatMap(({ bitId, routerId }, index) => [
          { pointer: `/settings/${index}/bitId`, id: bitId, of: bits },
          { pointer: `/settings/${index}/routerId`, id: routerId, of: routers },
        ]),
      );
      const { record, changes } = profileMade(current, body, at);
      return { changes, answer: record };
    },
  );

  searchRoute(app, doors, admit);
}

function searchRoute(app: App, doors: Doors, admit: Admit): void {
  const definition = {
    scope: "plans:compute",
    tag: "profiles",
    path: "/v1/profiles/search",
    operationId: "searchProfile",
    summary: "Which bits of the rack make a profile: alone, or the fewest together",
    description:
      "Nothing that must stay is ever cut into. What doubles back is asked for by its form. With a machine, each setting is planned.",
  } as const;
  app.post(
    definition.path,
    {
      config: { scope: definition.scope, operation: "act" },
      schema: schemaOf(definition, {
        body: ref(ProfileSearchSchema),
        response: { 200: ref(ProfileFoundSchema) },
      }),
    },
    (request, reply) =>
      admit(request, () => {
        const at = doors.now().toISOString();
        const { body } = askedOf<typeof definition.path, ProfileSearchAsked, undefined>(request, at);
        return searchFor(body, { answer: doors.answer, turns: turnsOf(reply), at });
      }),
  );
}
