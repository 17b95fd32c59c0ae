import { callerOf } from "../access/caller.ts";
import { requireKeyWithin } from "../access/giving.ts";
import type { App } from "../http/app-type.ts";
import { requireOne } from "../http/named-records.ts";
import { listShownRoute, readShownRoute, requireFound } from "../http/read-routes.ts";
import type { Doors } from "../http/routes.ts";
import { actRoute, createRoute } from "../http/write-routes.ts";
import { people } from "../people/kind.ts";
import { Problem } from "../problems/problem.ts";
import type { Expectation } from "../store/port.ts";
import type { Question } from "../store/query.ts";
import { createKey, revokeKey, rotateKey } from "./decide.ts";
import { keyTextFor, newKeyText } from "./key-text.ts";
import { keyKind } from "./kind.ts";
import { keys } from "./reads.ts";
import {
  CreatedKeySchema,
  KEY_SCHEMAS,
  KeyPageSchema,
  type KeyRecord,
  KeyRotationSchema,
  KeySchema,
  NewKeySchema,
  shownKey,
} from "./schema.ts";

const GIVES_NO_MORE =
  "A narrowed key hands out only keys whose scopes are among its own, and names them for a person's key.";

const MANAGE = { scope: "keys:manage", tag: "keys", of: keys } as const;

export function keyRoutes(app: App, doors: Doors): void {
  for (const schema of KEY_SCHEMAS) app.addSchema(schema);

  listShownRoute(
    app,
    doors,
    {
      ...MANAGE,
      path: "/v1/keys",
      operationId: "listKeys",
      summary: "List keys, in force and revoked",
      page: KeyPageSchema,
      filters: { personId: "Keys of this person." },
    },
    shownKey,
  );

  readShownRoute(
    app,
    doors,
    {
      ...MANAGE,
      path: "/v1/keys/:keyId",
      operationId: "getKey",
      summary: "Read a key, without its secret",
      answer: KeySchema,
    },
    function* (id) {
      const record = yield* keys.find(id);
      return record && shownKey(record);
    },
  );

  createRoute(
    app,
    doors,
    {
      ...MANAGE,
      path: "/v1/keys",
      operationId: "createKey",
      summary: "Create a key; its secret is shown once",
      description: GIVES_NO_MORE,
      body: NewKeySchema,
      answer: CreatedKeySchema,
    },
    function* ({ body, request, at }) {
      requireKeyWithin(callerOf(request), body);
      const key = newKeyText();
      const expects = yield* owner(body.personId);
      const { record, changes } = createKey(body, key, at);
      return { changes, expects, ...shownOnce(record, key.text) };
    },
  );

  createRoute(
    app,
    doors,
    {
      ...MANAGE,
      path: "/v1/keys/:keyId/rotate",
      operationId: "rotateKey",
      summary: "Give a key its next secret; the old one goes on working for a while",
      description: GIVES_NO_MORE,
      body: KeyRotationSchema,
      answer: CreatedKeySchema,
      location: ({ id }) => `${keyKind.path}/${id}`,
    },
    function* ({ params: { keyId }, body, request, at }) {
      const current = requireFound(keyKind, keyId, yield* keys.find(keyId));
      requireKeyWithin(callerOf(request), current);
      const key = keyTextFor(keyId);
      const { record, changes } = rotateKey(current, key, body, at);
      return { changes, ...shownOnce(record, key.text) };
    },
  );

  actRoute(
    app,
    doors,
    {
      ...MANAGE,
      path: "/v1/keys/:keyId/revoke",
      operationId: "revokeKey",
      summary: "Revoke a key at once and for good, with both its secrets",
      description:
        "Needs no If-Match: a lost key must go whatever has happened to its record. Twice is once.",
      answer: KeySchema,
    },
    function* (current, { at }) {
      const isForGood = current.expiresAt === undefined;
      const other = yield* keys.otherManager({ keyId: current.id, isForGood, at });
      const { record, changes, expects = [] } = revokeKey(current, yield* isManagers(current), other, at);
      return { changes, expects, answer: shownKey(record) };
    },
  );
}

/** The person a new key is for: still here when it is written. */
function* owner(personId: string | undefined): Question<Expectation[]> {
  if (personId === undefined) return [];
  const person = yield* requireOne("/personId", personId, people);
  if (person.state === "left") {
    throw new Problem("person-left", `${person.name} has left: no key for them.`);
  }
  return [{ kind: people.kind, id: person.id, version: person.version }];
}

function* isManagers({ role, personId }: KeyRecord): Question<boolean> {
  if (personId === undefined) return role === "manager";
  const person = yield* people.find(personId);
  return person?.role === "manager" && person.state === "active";
}

function shownOnce(record: KeyRecord, text: string) {
  return {
    headers: { "Cache-Control": "no-store" },
    answer: { ...shownKey(record), key: text },
    onRepeat: new Problem("secret-shown-once", `It is ${record.id}. If its secret is lost, revoke it.`),
  };
}
