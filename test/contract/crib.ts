import { expect } from "vitest";
import { PANEL_BIT, type Shop, TABLE_ROUTER } from "./shop.ts";

export type Role = "manager" | "instructor" | "member" | "student";

/** Somebody of the shop, with a key of their own. */
export type Somebody = { readonly id: string; readonly keyId: string; readonly key: string };

/** A straight bit of the invented shop: half an inch on a half-inch shank, about 2 oz (common practice). */
export const STRAIGHT_BIT = {
  name: "Straight, 12.7 mm",
  form: { kind: "straight", diameterMm: 12.7, cuttingLengthMm: 25.4 },
  shankDiameterMm: 12.7,
  wings: 2,
  massG: 58,
};

/** Sends a POST and answers with what it made; a refusal fails the test. */
export async function made(shop: Pick<Shop, "ask">, path: string, body: object, key?: string) {
  const answer = await shop.ask("POST", path, { body, ...(key !== undefined && { key }) });
  expect(answer.status, `POST ${path}: ${answer.text}`).toBeLessThan(300);
  return answer.body;
}

export const addBit = (shop: Pick<Shop, "ask">, given: object = {}) =>
  made(shop, "/v1/bits", { ...PANEL_BIT, ...given });

export const addRouter = (shop: Pick<Shop, "ask">, given: object = {}) =>
  made(shop, "/v1/routers", { ...TABLE_ROUTER, ...given });

export const addPlace = (shop: Pick<Shop, "ask">, name: string, insideId?: string) =>
  made(shop, "/v1/places", { name, kind: "drawer", ...(insideId !== undefined && { insideId }) });

/** Enters somebody and gives them a key. */
export async function addSomebody(
  shop: Pick<Shop, "ask">,
  role: Role,
  keyFields: object = {},
): Promise<Somebody> {
  const person = await made(shop, "/v1/people", { name: `A ${role}`, role });
  const key = await made(shop, "/v1/keys", { name: "Tablet", personId: person.id, ...keyFields });
  return { id: person.id, keyId: key.id, key: key.key };
}

/** The status of the simplest request that this key is answered for. */
export async function statusFor(shop: Pick<Shop, "ask">, key: string): Promise<number> {
  return (await shop.ask("GET", "/v1/me", { key })).status;
}

/** How far each history has been checked already: from there it goes on. */
const checked = new WeakMap<Shop["ask"], number>();

/** How far the history reaches: nothing was changed between two equal ones. */
export async function lastSequence({ ask }: Pick<Shop, "ask">): Promise<number> {
  const fromSequence = checked.get(ask) ?? 1;
  const { body } = await ask("POST", "/v1/events/verify", { body: { fromSequence } });
  checked.set(ask, body.lastSequence);
  return body.lastSequence;
}

/** What a plan is asked for, for records that are kept. */
export function planFor(bit: { readonly id: string }, router: { readonly id: string }, given: object = {}) {
  return {
    bit: { id: bit.id },
    router: { id: router.id },
    mounting: "table",
    woodId: "black-cherry",
    cut: { kind: "panel", thicknessMm: 19, edges: [{ lengthMm: 460, grain: "long" }] },
    ...given,
  };
}
