import Type from "typebox";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { requireOne } from "../http/named-records.ts";
import { idFilter, listRoute, readRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { changedMeanwhile, decidedAnew, stampOf, type Write } from "../http/write.ts";
import { Problem } from "../problems/problem.ts";
import type { Expectation } from "../store/port.ts";
import type { RecordReads } from "../store/record-reads.ts";
import { createKey, revokeKey, rotateKey } from "./decide.ts";
import { keyTextFor, newKeyText } from "./key-text.ts";
import type { KeyReads } from "./reads.ts";
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

type Parts = {
  readonly reads: KeyReads;
  readonly people: RecordReads<"person">;
  readonly write: Write;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

const KeyPath = Type.Object({ keyId: Type.String({ description: "Id of a key." }) });

export function keyRoutes(app: App, { reads, people, write, answerOnce, now }: Parts): void {
  for (const schema of KEY_SCHEMAS) app.addSchema(schema);
  const common = { scope: "keys:manage", tag: "keys" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/keys",
      operationId: "listKeys",
      summary: "List keys, in force and revoked",
      page: KeyPageSchema,
      filters: {
        personId: idFilter("Keys of this person."),
      },
    },
    async (afterId, most, { personId }) => (await reads.page(afterId, most, { personId })).map(shownKey),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/keys/:keyId",
      operationId: "getKey",
      summary: "Read a key, without its secret",
      record: KeySchema,
      noun: "key",
      parameter: "keyId",
    },
    reads.find,
    shownKey,
  );

  app.post(
    "/v1/keys",
    {
      config: { scope: "keys:manage", operation: "create" },
      schema: {
        operationId: "createKey",
        tags: ["keys"],
        summary: "Create a key; its secret is shown once",
        body: ref(NewKeySchema),
        response: { 201: ref(CreatedKeySchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const stamp = stampOf(request, now());
        const key = newKeyText();
        const expects = await owner(request.body.personId);
        const { record, changes } = createKey(request.body, key, stamp.at);
        return { stamp, changes, expects, ...shownOnce(record, key.text) };
      }),
  );

  app.post(
    "/v1/keys/:keyId/rotate",
    {
      config: { scope: "keys:manage", operation: "create" },
      schema: {
        operationId: "rotateKey",
        tags: ["keys"],
        summary: "Give a key its next secret; the old one opens for a while longer",
        params: KeyPath,
        body: ref(KeyRotationSchema),
        response: { 201: ref(CreatedKeySchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, async () => {
        const stamp = stampOf(request, now());
        const { keyId } = request.params;
        const current = requireFound("key", keyId, await reads.find(keyId));
        const key = keyTextFor(keyId);
        const { record, changes } = rotateKey(current, key, request.body, stamp.at);
        return { stamp, changes, ...shownOnce(record, key.text) };
      }),
  );

  app.post(
    "/v1/keys/:keyId/revoke",
    {
      config: { scope: "keys:manage", operation: "act" },
      schema: {
        operationId: "revokeKey",
        tags: ["keys"],
        summary: "Revoke a key at once and for good, with both its secrets",
        description:
          "Needs no If-Match: a lost key must go whatever has happened to its record. Twice is once.",
        params: KeyPath,
        response: { 200: ref(KeySchema) },
      },
    },
    (request, reply) =>
      decidedAnew(async () => {
        const { keyId } = request.params;
        const stamp = stampOf(request, now());
        const current = requireFound("key", keyId, await reads.find(keyId));
        const other = await reads.otherManager({
          keyId,
          isForGood: current.expiresAt === undefined,
          at: stamp.at,
        });
        const decided = revokeKey(current, await isManagers(current), other, stamp.at);
        const { record, changes, expects = [] } = decided;
        if (changes.length > 0) await write({ stamp, changes, expects }, changedMeanwhile);
        reply.header("ETag", etagOf(record.version));
        return shownKey(record);
      }),
  );

  /** The person a new key is for: still here when it is written. */
  async function owner(personId: string | undefined): Promise<Expectation[]> {
    if (personId === undefined) return [];
    const person = await requireOne("/personId", "person", personId, people);
    if (person.state === "left")
      throw new Problem("person-left", `${person.name} has left: no key for them.`);
    return [{ type: "person", id: person.id, version: person.version }];
  }

  async function isManagers({ role, personId }: KeyRecord): Promise<boolean> {
    if (personId === undefined) return role === "manager";
    const person = await people.find(personId);
    return person?.role === "manager" && person.state === "active";
  }
}

function shownOnce(record: KeyRecord, text: string) {
  return {
    headers: {
      Location: `/v1/keys/${record.id}`,
      ETag: etagOf(record.version),
      "Cache-Control": "no-store",
    },
    body: { ...shownKey(record), key: text },
    onRepeat: new Problem("secret-shown-once", `It is ${record.id}. If its secret is lost, revoke it.`),
  };
}
