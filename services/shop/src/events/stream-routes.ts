import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import type { FastifyReply } from "fastify";
import { callerOf } from "../access/caller.ts";
import type { App } from "../http/app-type.ts";
import { ref } from "../http/reference.ts";
import type { StillAllowed } from "../keys/authenticate.ts";
import { notValid } from "../problems/problem.ts";
import type { Store } from "../store/store.ts";
import { eventStream } from "./event-stream.ts";
import { openStreams } from "./open-streams.ts";
import { events } from "./reads.ts";
import { EventReference, StreamHeaders, StreamQuery } from "./schema.ts";

type Parts = Pick<Store, "answer" | "bell"> & { readonly isStillAllowed: StillAllowed };

const EVENT_STREAM = "text/event-stream";

/** Nothing on the way may hold events back to send them together, nor use the connection again. */
const STREAM_HEADERS = {
  "Content-Type": `${EVENT_STREAM}; charset=utf-8`,
  "Cache-Control": "private, no-cache, no-transform",
  "X-Accel-Buffering": "no",
  Connection: "close",
};

export function eventStreamRoutes(app: App, { answer, bell, isStillAllowed }: Parts): void {
  const streams = openStreams(app);

  app.get(
    "/v1/events/stream",
    {
      config: { scope: "events:read", operation: "act" },
      exposeHeadRoute: false,
      schema: {
        operationId: "followEvents",
        tags: ["events"],
        summary: "Follow what is changed, as it happens",
        description:
          "Server-sent events: `id` is the sequence, `event` the type, `data` the event as JSON. Begins after `Last-Event-ID` or `after`, and goes on as changes are committed.",
        querystring: StreamQuery,
        headers: StreamHeaders,
        response: {
          200: {
            description: "A stream of events, each as `data` of one message.",
            content: { [EVENT_STREAM]: { schema: ref(EventReference) } },
          },
        },
      },
    },
    async (request, reply) => {
      const given = request.headers["last-event-id"];
      const after = given ?? request.query.after;
      const latest = (await answer(events.latest()))?.sequence ?? 0;
      if (after > latest) throw afterTheLatest(given === undefined, latest);
      const { signal, end } = streams.open(callerOf(request).keyId);
      reply.raw.on("close", end);
      const page = (last: number, most: number) => answer(events.page(last, most));
      const parts = { page, bell, mayGoOn: () => isStillAllowed(request) };
      // Taken out of the framework's hands, whose time-out is for answers that end.
      reply.hijack();
      void sendStream(eventStream(after, signal, parts), reply).finally(end);
    },
  );
}

/** Writes as fast as the reader takes it. A reader who leaves ends it, and that is no error. */
async function sendStream(frames: AsyncIterable<string>, reply: FastifyReply): Promise<void> {
  reply.raw.writeHead(200, { ...headersSoFar(reply), ...STREAM_HEADERS });
  try {
    await pipeline(Readable.from(frames, { highWaterMark: 1 }), reply.raw);
  } catch (error) {
    if (!reply.raw.destroyed) reply.raw.destroy();
    if (!isPrematureClose(error)) reply.log.error({ err: error }, "a stream broke");
  }
}

function headersSoFar(reply: FastifyReply): Record<string, string> {
  const headers = Object.entries(reply.getHeaders()).map(([name, value]) => [name, String(value)]);
  return Object.fromEntries(headers.filter(([name = ""]) => !isOwnHeader(name)));
}

function isOwnHeader(name: string): boolean {
  return Object.keys(STREAM_HEADERS).some((each) => each.toLowerCase() === name);
}

function isPrematureClose(error: unknown): boolean {
  return error instanceof Error && "code" in error && error.code === "ERR_STREAM_PREMATURE_CLOSE";
}

/** Waiting for such an event would miss all before it: a history that was put back from a copy is shorter. */
function afterTheLatest(isQuery: boolean, latest: number) {
  return notValid([
    {
      in: isQuery ? "query" : "header",
      pointer: isQuery ? "/after" : "/Last-Event-ID",
      message: "There is no such event yet.",
      accepted: `a sequence up to that of the latest event, ${latest}`,
    },
  ]);
}
