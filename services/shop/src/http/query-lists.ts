import type { preValidationHookHandler } from "fastify";
import type { App } from "./app-type.ts";
import { componentFrom } from "./serialization.ts";

/** Takes query parameters that are lists: with commas between the items, or several times. Register before any route. */
export function takeQueryLists(app: App): void {
  app.addHook("onRoute", (route) => {
    const lists = listsIn(route.schema?.querystring);
    if (lists.length > 0) route.preValidation = [route.preValidation ?? [], splitter(lists)].flat();
  });
}

function listsIn(querystring: unknown): string[] {
  const properties = querystring === undefined ? {} : (componentFrom(querystring)["properties"] ?? {});
  return Object.entries(properties).flatMap(([name, schema]) =>
    Object(schema).type === "array" ? [name] : [],
  );
}

function splitter(names: readonly string[]): preValidationHookHandler {
  return (request, _reply, done) => {
    const query = Object(request.query);
    for (const name of names) {
      const given: unknown = query[name];
      if (given !== undefined) query[name] = [given].flat().flatMap((each) => String(each).split(","));
    }
    done();
  };
}
