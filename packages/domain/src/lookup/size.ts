/** Which dimension of a bit a size speaks of; `any` if nobody said. */
export type SizeRole = "any" | "diameter" | "shank" | "radius" | "length";

/** One dimension of a bit. */
export type BitSize = { readonly role: Exclude<SizeRole, "any">; readonly mm: number };
