export const ROLES = ["manager", "instructor", "member", "student"] as const;

/** A program is nobody's student. */
export const PROGRAM_ROLES = ["manager", "instructor", "member"] as const;

export type Role = (typeof ROLES)[number];

type Grant = { readonly meaning: string; readonly roles: readonly Role[] };

const EVERYONE: readonly Role[] = ROLES;
const MEMBERS: readonly Role[] = ["manager", "instructor", "member"];
const STAFF: readonly Role[] = ["manager", "instructor"];
const MANAGERS: readonly Role[] = ["manager"];

/**
 * Who may do what: the one table. Where it says `own`, whoever is not in charge sees and enters what is in their own name only. A
 * student sees the settings of their courses and their own record; the rack, its costs and its history are the members'.
 */
export const SCOPES = {
  "metrics:read": { meaning: "Read the service's counters.", roles: MANAGERS },
  "self:read": { meaning: "See who one is here.", roles: EVERYONE },
  "bits:read": { meaning: "See the rack.", roles: MEMBERS },
  "bits:write": { meaning: "Add, change, import and remove bits.", roles: STAFF },
  "bits:hold": {
    meaning: "Take a bit out of use until somebody in charge has looked at it.",
    roles: EVERYONE,
  },
  "places:read": { meaning: "See places and what is in them.", roles: MEMBERS },
  "places:write": { meaning: "Add, change and count places.", roles: STAFF },
  "routers:read": { meaning: "See the routers, their collets and readings.", roles: MEMBERS },
  "routers:write": { meaning: "Add, change and remove routers, collets and readings.", roles: STAFF },
  "woods:read": { meaning: "See woods and materials.", roles: EVERYONE },
  "plans:compute": { meaning: "Ask for a plan.", roles: MEMBERS },
  "plans:read": { meaning: "See the stored plans.", roles: MEMBERS },
  "plans:write": { meaning: "Store plans.", roles: STAFF },
  "jobs:read": { meaning: "See jobs; a member, their own and their courses'.", roles: EVERYONE },
  "jobs:write": {
    meaning: "Plan jobs and log what was made; a member, their own and their courses'.",
    roles: MEMBERS,
  },
  "loans:read": { meaning: "See loans; a member, their own.", roles: EVERYONE },
  "loans:write": { meaning: "Take bits out and bring them back; a member, their own.", roles: EVERYONE },
  "inspections:read": { meaning: "See what was found on bits.", roles: MEMBERS },
  "inspections:write": { meaning: "Inspect, hold, release and retire bits.", roles: STAFF },
  "sharpenings:read": { meaning: "See sharpenings and what is left of an edge.", roles: MEMBERS },
  "sharpenings:write": { meaning: "Send bits to sharpening and enter what came back.", roles: STAFF },
  "trials:read": { meaning: "See speed trials and the next one to make.", roles: MEMBERS },
  "trials:write": { meaning: "Enter speed trials and set them aside.", roles: STAFF },
  "uses:read": { meaning: "See what was done; a member, by themselves.", roles: EVERYONE },
  "uses:write": { meaning: "Enter what was done; a member, by themselves.", roles: EVERYONE },
  "stock:read": { meaning: "Ask what is due, most used and to reorder.", roles: STAFF },
  "people:read": { meaning: "See who uses the shop.", roles: STAFF },
  "people:write": { meaning: "Enter people and change their role.", roles: MANAGERS },
  "policy:write": { meaning: "Tighten the shop's policy.", roles: MANAGERS },
  "courses:read": { meaning: "See courses and who is in them; a member, their own.", roles: EVERYONE },
  "courses:write": { meaning: "Set up courses and who is in them; an instructor, their own.", roles: STAFF },
  "qualifications:read": {
    meaning: "See what people are qualified for; a member, their own.",
    roles: EVERYONE,
  },
  "qualifications:write": { meaning: "Sign and withdraw qualifications.", roles: STAFF },
  "approvals:read": {
    meaning: "See approved settings and their sheets; a member, their courses'.",
    roles: EVERYONE,
  },
  "approvals:write": { meaning: "Draft, issue, re-issue and withdraw settings.", roles: STAFF },
  "checks:ask": {
    meaning: "Ask whether somebody may run something; a member, about themselves.",
    roles: EVERYONE,
  },
  "checks:read": { meaning: "See kept checks; a member, their own.", roles: EVERYONE },
  "events:read": { meaning: "See who changed what, and when.", roles: STAFF },
  "events:checkpoint": { meaning: "Have the history signed as it stands.", roles: STAFF },
  "backups:manage": { meaning: "Make backups and see which there are.", roles: MANAGERS },
  "keys:manage": { meaning: "Create, rotate, list and revoke keys.", roles: MANAGERS },
} as const satisfies Record<string, Grant>;

export type Scope = keyof typeof SCOPES;

/** The name of every scope. */
export const SCOPE_NAMES = scopeNames();

/** Whether a role is in charge of others: it sees and acts for anybody. */
export function isStaff(role: Role): boolean {
  return STAFF.includes(role);
}

/** Whether a role holds a scope. */
export function holdsScope(role: Role, scope: Scope): boolean {
  const { roles }: Grant = SCOPES[scope];
  return roles.includes(role);
}

/** Every scope that a role holds. */
export function scopesOfRole(role: Role): Scope[] {
  return SCOPE_NAMES.filter((scope) => holdsScope(role, scope));
}

function scopeNames(): Scope[] {
  const isScope = (name: string): name is Scope => Object.hasOwn(SCOPES, name);
  return Object.keys(SCOPES).filter(isScope);
}
