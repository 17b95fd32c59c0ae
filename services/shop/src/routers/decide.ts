import { DomainError, routerFaults } from "@rimwise/domain";
import { merged } from "../http/fields.ts";
import { creation, nextVersion, removal, replacement } from "../store/changes.ts";
import type { Change } from "../store/port.ts";
import type { NewRouter, RouterChange, RouterRecord } from "./schema.ts";

type Decision = { readonly record: RouterRecord; readonly change: Change };

/** A new router of the shop. Throws DomainError where its plate or dial contradicts itself. */
export function createRouter(id: string, router: NewRouter, at: string): Decision {
  requireSound(router);
  const record = { ...router, ...readNow(router, at), id, createdAt: at, updatedAt: at, version: 1 };
  return { record, change: creation("router", record) };
}

/** A router's next state. Throws DomainError where what it would become does not fit together. */
export function changeRouter(current: RouterRecord, change: RouterChange, at: string): Decision {
  const { dialReadAt: _old, ...next } = nextVersion(merged<RouterRecord>(current, change), at);
  requireSound(next);
  const dated = change.dial === undefined ? keptDate(current) : readNow(next, at);
  const record: RouterRecord = { ...next, ...dated };
  return { record, change: replacement("router", current, record) };
}

/** Lets a router go; its last state stays in the events. */
export function removeRouter(current: RouterRecord): Change {
  return removal("router", current);
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
