import { asc, isNull } from "drizzle-orm";
import { all, type Question, recordQuery } from "../store/query.ts";
import { signingKeyKind } from "./kind.ts";
import type { SigningKeyRecord } from "./record-schema.ts";

const { column } = signingKeyKind;

const inOrder = recordQuery(signingKeyKind, (rows) =>
  rows.orderBy(asc(isNull(column("retiredAt"))), asc(column("id"))),
);

export const signingKeys = {
  /** Every key, oldest first; the one that signs is the last. */
  inOrder: (): Question<SigningKeyRecord[]> => all(inOrder),
};
