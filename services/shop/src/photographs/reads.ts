import { and, asc, count, eq, gt } from "drizzle-orm";
import { all, fieldsQuery, first, given, type Question, rowQuery } from "../store/query.ts";
import { recordQueries } from "../store/record-queries.ts";
import { photographKind } from "./kind.ts";
import type { Photograph } from "./schema.ts";

export const photographs = {
  ...recordQueries(photographKind),
  /** Photographs without their bytes, which a list never reads. */
  shown,
  /** How many a bit has. */
  countOf,
};

const SHOWN = [
  "id",
  "bitId",
  "personId",
  "mediaType",
  "caption",
  "sha256",
  "createdAt",
  "updatedAt",
  "version",
] as const;

const id = photographKind.column("id");
const bitId = photographKind.column("bitId");

const pageOf = (isOfBit: boolean) =>
  fieldsQuery(photographKind, SHOWN, (rows) =>
    rows
      .where(and(gt(id, given("afterId")), isOfBit ? eq(bitId, given("bitId")) : undefined))
      .orderBy(asc(id))
      .limit(given("most")),
  );
const page = pageOf(false);
const pageOfBit = pageOf(true);

const kept = rowQuery({ kept: count() }, (selection) =>
  selection.from(photographKind.table).where(eq(bitId, given("bitId"))),
);

function shown(afterId: string, most: number, ofBit: string | undefined): Question<Photograph[]> {
  return all(ofBit === undefined ? page : pageOfBit, { afterId, most, bitId: ofBit });
}

function* countOf(ofBit: string): Question<number> {
  return (yield* first(kept, { bitId: ofBit }))?.kept ?? 0;
}
