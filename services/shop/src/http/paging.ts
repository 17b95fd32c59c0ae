import type { FastifyReply, FastifyRequest } from "fastify";
import Type, { type Static, type TSchema } from "typebox";
import { Problem } from "../problems/problem.ts";

export const PAGE_LIMITS = { usual: 50, most: 200 } as const;

const CURSOR_CONTENT = /^[\w.:~-]{1,400}$/;

export const PageQuery = Type.Object(
  {
    limit: Type.Integer({
      minimum: 1,
      maximum: PAGE_LIMITS.most,
      default: PAGE_LIMITS.usual,
      description: "Most records on one page.",
    }),
    cursor: Type.Optional(
      Type.String({ description: "The `nextCursor` of the page before. Opaque.", maxLength: 600 }),
    ),
  },
  { additionalProperties: false },
);

/** A page of records: `nextCursor` is null on the last one. */
export function pageSchema<Item extends TSchema>($id: string, item: Item, description: string) {
  return Type.Object(
    {
      data: Type.Array(item, { description }),
      nextCursor: Type.Union([Type.String(), Type.Null()], {
        description: "Send it as `cursor` for the next page; null on the last page.",
      }),
    },
    { $id, description: `One page. ${description}`, additionalProperties: false },
  );
}

/**
 * One page with its `Link rel="next"` (RFC 8288). `read` is asked for one row
 * more than the page holds, which shows whether there is another page; the next one goes on from the place after the last row.
 */
export async function sendPage<Row extends { readonly id: string }>(
  request: FastifyRequest,
  reply: FastifyReply,
  { limit, cursor }: Static<typeof PageQuery>,
  read: (after: string, most: number) => Promise<Row[]>,
  placeAfter: (row: Row) => string = ({ id }) => id,
): Promise<{ data: Row[]; nextCursor: string | null }> {
  const rows = await read(cursor === undefined ? "" : fromCursor(cursor), limit + 1);
  const data = rows.slice(0, limit);
  const last = data.at(-1);
  if (last === undefined || rows.length <= limit) return { data, nextCursor: null };
  const nextCursor = toCursor(placeAfter(last));
  linkNext(request, reply, { cursor: nextCursor });
  return { data, nextCursor };
}

/** Adds `Link rel="next"`: this URL with other query parameters. */
export function linkNext(
  request: FastifyRequest,
  reply: FastifyReply,
  changed: Record<string, string>,
): void {
  const [path = "", query] = request.url.split("?", 2);
  const parameters = new URLSearchParams(query);
  for (const [name, value] of Object.entries(changed)) parameters.set(name, value);
  const before = reply.getHeader("Link");
  const next = `<${path}?${parameters}>; rel="next"`;
  reply.header("Link", before === undefined ? next : `${String(before)}, ${next}`);
}

function toCursor(id: string): string {
  return Buffer.from(id).toString("base64url");
}

function fromCursor(cursor: string): string {
  const id = Buffer.from(cursor, "base64url").toString();
  if (CURSOR_CONTENT.test(id)) return id;
  throw notACursor();
}

/** The refusal of a cursor that another list gave, or none. */
export function notACursor(): Problem {
  return new Problem("not-valid", "The cursor is not one that this service gave.", {
    errors: [
      {
        in: "query",
        pointer: "/cursor",
        message: "This is not a cursor of this list.",
        accepted: "the nextCursor of the page before, unchanged; or leave it out for the first page",
      },
    ],
  });
}
