import { Ajv } from "ajv";
import Fastify from "fastify";
import Type, { type TSchema } from "typebox";
import { describe, expect, onTestFinished, test } from "vitest";
import { openInMemoryStore } from "../../testing/in-memory-store.ts";
import { buildApp } from "../app.ts";
import { readConfig } from "../config.ts";
import type { App } from "./app-type.ts";
import { compileAtFirstUse } from "./compile-at-first-use.ts";
import { ref } from "./reference.ts";

const NAME = "Name";

async function appWith(component: TSchema, answer: TSchema = Type.Object({ name: ref(component) })) {
  const app: App = Fastify();
  onTestFinished(() => app.close());
  const compileAll = compileAtFirstUse(app).compileAll;
  app.addSchema(component);
  const body = Type.Object({ name: ref(component) }, { additionalProperties: false });
  app.post("/", { schema: { body, response: { 200: answer } } }, async (request) => request.body);
  await app.ready();
  const post = (payload: object) => app.inject({ method: "POST", url: "/", payload });
  return { post, compileAll };
}

describe("the service", () => {
  test("has only schemas that are valid and can be compiled", async () => {
    const { store } = openInMemoryStore();
    const config = readConfig({ RIMWISE_DATABASE: ":memory:", RIMWISE_LOG_LEVEL: "silent" });
    const { app, compileAll } = await buildApp({ config, store });
    onTestFinished(() => app.close());
    await app.ready();
    expect(compileAll).not.toThrow();
    // JSON Schema draft-07, by its own meta-schema.
    const ajv = new Ajv({ strict: false });
    for (const [id, component] of Object.entries(app.getSchemas())) {
      expect(ajv.validateSchema(Object(component)), `${id}: ${ajv.errorsText()}`).toBe(true);
    }
  });
});

describe("a schema", () => {
  test("validates and writes from the first request on", async () => {
    const { post } = await appWith(Type.String({ $id: NAME, maxLength: 3 }));
    for (const _ of ["first", "second"]) {
      expect((await post({ name: "cove", x: 1 })).json()).toMatchObject({ code: "FST_ERR_VALIDATION" });
      const good = await post({ name: "ogee".slice(1) });
      expect([good.statusCode, good.json()]).toEqual([200, { name: "gee" }]);
    }
  });

  test("means the components of its own app, and no other app's of the same name", async () => {
    const short = await appWith(Type.String({ $id: NAME, maxLength: 1 }));
    const long = await appWith(Type.String({ $id: NAME, maxLength: 9 }));
    const statuses = [await short.post({ name: "cove" }), await long.post({ name: "cove" })];
    expect(statuses.map(({ statusCode }) => statusCode)).toEqual([400, 200]);
  });

  test.each<[string, TSchema, TSchema | undefined]>([
    ["that validates with a word nobody knows", Type.Unsafe({ $id: NAME, longest: 3 }), undefined],
    ["whose bound is text", Type.String({ $id: NAME, maxLength: Object("3") }), undefined],
    ["that writes what is nowhere", Type.String({ $id: NAME }), Type.Unsafe({ $ref: "Nothing#" })],
  ])("%s is found when all are compiled", async (_, component, answer) => {
    const { compileAll } = await appWith(component, answer);
    expect(compileAll).toThrow();
  });
});
