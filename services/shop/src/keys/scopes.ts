export const ROLES = ["manager", "instructor", "member"] as const;

export type Role = (typeof ROLES)[number];

type Grant = { readonly meaning: string; readonly roles: readonly Role[] };

/** Who may do what: the one table. */
export const SCOPES = {
  "bits:read": { meaning: "See the rack.", roles: ["manager", "instructor", "member"] },
  "bits:write": { meaning: "Add, change and remove bits.", roles: ["manager", "instructor"] },
  "routers:read": { meaning: "See the routers.", roles: ["manager", "instructor", "member"] },
  "routers:write": { meaning: "Add, change and remove routers.", roles: ["manager", "instructor"] },
  "woods:read": { meaning: "See woods and materials.", roles: ["manager", "instructor", "member"] },
  "plans:compute": { meaning: "Ask for a plan.", roles: ["manager", "instructor", "member"] },
  "plans:read": { meaning: "See the stored plans.", roles: ["manager", "instructor", "member"] },
  "plans:write": { meaning: "Store plans.", roles: ["manager", "instructor"] },
  "events:read": { meaning: "See who changed what, and when.", roles: ["manager", "instructor"] },
  "keys:manage": { meaning: "Create, list and revoke keys.", roles: ["manager"] },
} as const satisfies Record<string, Grant>;

export type Scope = keyof typeof SCOPES;

/** Whether a role holds a scope. */
export function holdsScope(role: Role, scope: Scope): boolean {
  const { roles }: Grant = SCOPES[scope];
  return roles.includes(role);
}
