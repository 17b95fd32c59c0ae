import Type from "typebox";
import type { AnswerOnce } from "../http/answer-once.ts";
import type { App } from "../http/app-type.ts";
import { etagOf, requireMatch } from "../http/conditional.ts";
import { listRoute, readRoute, requireFound } from "../http/record-routes.ts";
import { ref } from "../http/reference.ts";
import { stampOf, type Write } from "../http/write.ts";
import { stillManaging } from "../keys/decide.ts";
import type { KeyReads } from "../keys/reads.ts";
import { newId } from "../store/id.ts";
import type { RecordReads } from "../store/record-reads.ts";
import { changePerson, createPerson, endsManager } from "./decide.ts";
import {
  NewPersonSchema,
  PERSON_SCHEMAS,
  PersonChangeSchema,
  PersonPageSchema,
  PersonSchema,
} from "./schema.ts";

type Parts = {
  readonly reads: RecordReads<"person">;
  readonly keys: KeyReads;
  readonly write: Write;
  readonly answerOnce: AnswerOnce;
  readonly now: () => Date;
};

const PersonPath = Type.Object({ personId: Type.String({ description: "Id of a person." }) });

export function personRoutes(app: App, { reads, keys, write, answerOnce, now }: Parts): void {
  for (const schema of PERSON_SCHEMAS) app.addSchema(schema);
  const common = { scope: "people:read", tag: "people" } as const;

  listRoute(
    app,
    {
      ...common,
      path: "/v1/people",
      operationId: "listPeople",
      summary: "List the people of the shop",
      page: PersonPageSchema,
    },
    (afterId, most) => reads.page(afterId, most),
  );

  readRoute(
    app,
    {
      ...common,
      path: "/v1/people/:personId",
      operationId: "getPerson",
      summary: "Read a person",
      record: PersonSchema,
      noun: "person",
      parameter: "personId",
    },
    reads.find,
  );

  app.post(
    "/v1/people",
    {
      config: { scope: "people:write", operation: "create" },
      schema: {
        operationId: "createPerson",
        tags: ["people"],
        summary: "Enter somebody",
        body: ref(NewPersonSchema),
        response: { 201: ref(PersonSchema) },
      },
    },
    (request, reply) =>
      answerOnce(request, reply, () => {
        const stamp = stampOf(request, now());
        const { record, change } = createPerson(newId("person"), request.body, stamp.at);
        const headers = { Location: `/v1/people/${record.id}`, ETag: etagOf(record.version) };
        return { stamp, changes: [change], headers, body: record };
      }),
  );

  app.patch(
    "/v1/people/:personId",
    {
      config: { scope: "people:write", operation: "change" },
      schema: {
        operationId: "updatePerson",
        tags: ["people"],
        summary: "Change a person's name or role, or say that they have left",
        description: "A change of role holds at once for every key of the person.",
        params: PersonPath,
        body: ref(PersonChangeSchema),
        response: { 200: ref(PersonSchema) },
      },
    },
    async (request, reply) => {
      const { personId } = request.params;
      const current = requireFound("person", personId, await reads.find(personId));
      requireMatch(request, current.version);
      const stamp = stampOf(request, now());
      const { record, change } = changePerson(current, request.body, stamp.at);
      const expects = endsManager(current, record)
        ? stillManaging(await keys.otherManager({ personId, isForGood: true, at: stamp.at }))
        : [];
      await write({ stamp, changes: [change], expects });
      reply.header("ETag", etagOf(record.version));
      return record;
    },
  );
}
