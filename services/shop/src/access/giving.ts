import { Problem } from "../problems/problem.ts";
import { type Caller, mayDo } from "./caller.ts";
import { isStaff, type Role, SCOPE_NAMES, type Scope, scopesOfRole } from "./scopes.ts";

/** What a key opens: at most its role's scopes, and only those it is narrowed to. */
type KeyPower = {
  readonly role?: Role | undefined;
  readonly personId?: string | undefined;
  readonly scopes?: readonly Scope[] | undefined;
};

/** What somebody may do here: nothing once they have left. */
type PersonPower = { readonly role: Role; readonly state: "active" | "left" };

/** Refuses to hand out a key, or its next secret, that opens more than the caller's own. */
export function requireKeyWithin(caller: Caller, { role, personId, scopes }: KeyPower): void {
  // Whoever has a key of a person has what that person is ever given: a narrowed key says now how far it goes.
  if (caller.scopes !== undefined && personId !== undefined && scopes === undefined) {
    throw new Problem(
      "scope-missing",
      "A narrowed key hands out narrowed keys of people only: name the scopes.",
    );
  }
  requireHeld(caller, scopes ?? (role === undefined ? [] : scopesOfRole(role)));
}

/**
 * Refuses to give a person more than the caller holds. Somebody new who is not in charge of others has no key yet, and gets none
 * by this: they may be entered by whoever enters people.
 */
export function requirePersonWithin(
  caller: Caller,
  before: PersonPower | undefined,
  after: PersonPower,
): void {
  if (before === undefined && !isStaff(after.role)) return;
  const held = before === undefined ? [] : scopesOfPerson(before);
  requireHeld(
    caller,
    scopesOfPerson(after).filter((scope) => !held.includes(scope)),
  );
}

function scopesOfPerson({ role, state }: PersonPower): readonly Scope[] {
  return state === "active" ? scopesOfRole(role) : [];
}

function requireHeld(caller: Caller, given: readonly Scope[]): void {
  const missing = SCOPE_NAMES.filter((scope) => given.includes(scope) && !mayDo(caller, scope));
  if (missing.length === 0) return;
  const named = missing.slice(0, 5).join(", ");
  throw new Problem(
    "scope-missing",
    `A key gives no more than it holds, and this one does not hold ${named}${missing.length > 5 ? " and more" : ""}.`,
  );
}
