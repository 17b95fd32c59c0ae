import type { FastifyReply, FastifyRequest } from "fastify";
import type { NoteRepeat } from "./answer-again.ts";
import { remembered } from "./remembered.ts";

/**
 * Answers a read that rests on nothing but records, the query and the `viewer`: neither on the clock nor on anything else of the
 * request. `read` may set the headers that go with its answer, ETag and Link.
 */
export type AnswerRead = (
  request: FastifyRequest,
  reply: FastifyReply,
  viewer: string,
  read: () => Promise<object>,
) => void | Promise<void>;

type Sent = { readonly text: string; readonly headers: Readonly<Record<string, string>> };

const CARRIED = ["etag", "link"];
/** A record or a short list is asked for again and again; long answers would fill the memory. */
const MOST_CHARACTERS = 8192;

/** Gives the text of the answer before as long as nothing was committed. What it keeps is what callers were sent: nobody can change it. */
export function answersReads(noteRepeat: NoteRepeat): AnswerRead {
  const answers = remembered<Sent>();
  return (request, reply, viewer, read) => {
    const asked = `${viewer} ${request.url}`;
    const { mark } = request;
    const known = mark === undefined ? undefined : answers.recall(mark, asked);
    if (known !== undefined) {
      noteRepeat(request, known.text);
      return void send(known, reply);
    }
    return read().then(async (answer) => {
      const text = String(reply.serialize(answer));
      const sent = { text, headers: carriedBy(reply) };
      if (mark !== undefined && text.length <= MOST_CHARACTERS) answers.keep(mark, asked, sent);
      await send(sent, reply);
    });
  };
}

function carriedBy(reply: FastifyReply): Record<string, string> {
  const set = CARRIED.map((name) => [name, reply.getHeader(name)] as const);
  return Object.fromEntries(
    set.flatMap(([name, value]) => (value === undefined ? [] : [[name, String(value)]])),
  );
}

function send({ text, headers }: Sent, reply: FastifyReply): FastifyReply {
  return reply.headers(headers).type("application/json; charset=utf-8").send(text);
}
