import { DomainError, routerFaults } from "@rimwise/domain";
import { merged } from "../http/fields.ts";
import { creation, type Decision, newRecord, nextVersion, removal, replacement } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import { routerKind } from "./kind.ts";
import type { NewRouter, RouterChange, RouterRecord } from "./schema.ts";

/** A new router of the shop. Throws DomainError when its plate or dial contradicts itself. */
export function createRouter(id: string, router: NewRouter, at: string): Decision<RouterRecord> {
  requireSound(router);
  const record = newRecord(id, { ...router, ...readNow(router, at) }, at);
  return { record, changes: [creation(routerKind, record)] };
}

/** A router's next state. Throws DomainError when what it would become does not fit together. */
export function changeRouter(
  current: RouterRecord,
  change: RouterChange,
  at: string,
): Decision<RouterRecord> {
  const { dialReadAt: _old, ...next } = nextVersion(merged<RouterRecord>(current, change), at);
  requireSound(next);
  const dated = change.dial === undefined ? keptDate(current) : readNow(next, at);
  const record: RouterRecord = { ...next, ...dated };
  return { record, changes: [replacement(routerKind, current, record)] };
}

/** Lets a router go; its last state stays in the events. */
export function removeRouter(current: RouterRecord): Change {
  return removal(routerKind, current);
}

/** Readings that come with the router itself count from when they were given. */
function readNow({ dial }: NewRouter, at: string): { readonly dialReadAt?: string } {
  return (dial?.readings ?? []).length > 0 ? { dialReadAt: at } : {};
}

function keptDate({ dialReadAt }: RouterRecord): { readonly dialReadAt?: string } {
  return dialReadAt === undefined ? {} : { dialReadAt };
}

function requireSound(router: NewRouter): void {
  const faults = routerFaults(router);
  if (faults.length > 0) throw new DomainError(faults);
}
