import Type from "typebox";
import type { App } from "../http/app-type.ts";
import { linkNext, PageQuery } from "../http/paging.ts";
import { ref } from "../http/reference.ts";
import type { EventReads } from "./reads.ts";
import { EventPageSchema, EventSchema } from "./schema.ts";

const FeedQuery = Type.Object(
  {
    after: Type.Integer({
      minimum: 0,
      default: 0,
      description: "Sequence of the last event already seen; 0 starts at the first.",
    }),
    limit: PageQuery.properties.limit,
  },
  { additionalProperties: false },
);

export function eventRoutes(app: App, { reads }: { reads: EventReads }): void {
  for (const schema of [EventSchema, EventPageSchema]) app.addSchema(schema);

  app.get(
    "/v1/events",
    {
      config: { scope: "events:read", operation: "list" },
      schema: {
        operationId: "listEvents",
        tags: ["events"],
        summary: "List what was changed, by whom and when",
        querystring: FeedQuery,
        response: { 200: ref(EventPageSchema) },
      },
    },
    async (request, reply) => {
      const { after, limit } = request.query;
      const rows = await reads.page(after, limit + 1);
      const data = rows.slice(0, limit);
      const last = data.at(-1);
      if (last === undefined || rows.length <= limit) return { data, nextCursor: null };
      const nextCursor = String(last.sequence);
      linkNext(request, reply, { after: nextCursor });
      return { data, nextCursor };
    },
  );
}
