import Type from "typebox";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf } from "../http/conditional.ts";
import { PageQuery, sendPage } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import { changedMeanwhile, stampOf, type Write } from "../http/write.ts";
import { Problem } from "../problems/problem.ts";
import { createKey, revokeKey } from "./decide.ts";
import { newKeyText } from "./key-text.ts";
import type { KeyReads } from "./reads.ts";
import { CreatedKeySchema, KeyPageSchema, KeySchema, NewKeySchema, shownKey } from "./schema.ts";

type Parts = { reads: KeyReads; write: Write; answerOnce: AnswerOnce; now: () => Date };

const KeyPath = Type.Object({ keyId: Type.String({ description: "Id of a key." }) });

export function keyRoutes(app: App, { reads, write, answerOnce, now }: Parts): void {
  for (const schema of [NewKeySchema, KeySchema, CreatedKeySchema, KeyPageSchema]) app.addSchema(schema);

  app.get(
    "/v1/keys",
    {
      config: { scope: "keys:manage", operation: "list" },
      schema: {
        operationId: "listKeys",
        tags: ["keys"],
        summary: "List keys, in force and revoked",
        querystring: PageQuery,
        response: { 200: ref(KeyPageSchema) },
      },
    },
    async (request, reply) => {
      const page = await sendPage(request, reply, request.query, reads.page);
      return { ...page, data: page.data.map(shownKey) };
    },
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
      answerOnce(request, reply, () => {
        const stamp = stampOf(request, now());
        const key = newKeyText();
        const { record, change } = createKey(request.body, key, stamp.at);
        return {
          stamp,
          changes: [change],
          headers: {
            Location: `/v1/keys/${record.id}`,
            ETag: etagOf(record.version),
            "Cache-Control": "no-store",
          },
          body: { ...shownKey(record), key: key.text },
          onRepeat: new Problem("secret-shown-once", `It is ${record.id}. If its secret is lost, revoke it.`),
        };
      }),
  );

  app.get(
    "/v1/keys/:keyId",
    {
      config: { scope: "keys:manage", operation: "read" },
      schema: {
        operationId: "getKey",
        tags: ["keys"],
        summary: "Read a key, without its secret",
        params: KeyPath,
        response: { 200: ref(KeySchema) },
      },
    },
    async (request, reply) => {
      const record = await found(reads, request.params.keyId);
      reply.header("ETag", etagOf(record.version));
      return shownKey(record);
    },
  );

  app.post(
    "/v1/keys/:keyId/revoke",
    {
      config: { scope: "keys:manage", operation: "act" },
      schema: {
        operationId: "revokeKey",
        tags: ["keys"],
        summary: "Revoke a key at once and for good",
        description:
          "Needs no If-Match: a lost key must go whatever has happened to its record. Twice is once.",
        params: KeyPath,
        response: { 200: ref(KeySchema) },
      },
    },
    async (request, reply) => {
      const stamp = stampOf(request, now());
      const current = await found(reads, request.params.keyId);
      const { record, changes, expects } = revokeKey(current, await reads.otherManager(current.id), stamp.at);
      if (changes.length > 0) await write({ stamp, changes, expects }, changedMeanwhile);
      reply.header("ETag", etagOf(record.version));
      return shownKey(record);
    },
  );
}

async function found(reads: KeyReads, id: string) {
  const record = await reads.find(id);
  if (record === undefined) throw new Problem("not-found", `There is no key ${id}.`);
  return record;
}
