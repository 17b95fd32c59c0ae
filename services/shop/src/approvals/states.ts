/** The states of an approval. `expired` is never kept: it follows from the clock. */
export const APPROVAL_STATES = ["draft", "issued", "lapsed", "expired", "withdrawn", "replaced"] as const;

export const KEPT_STATES = ["draft", "issued", "lapsed", "withdrawn", "replaced"] as const;

export const SUPERVISION_LEVELS = ["beside", "in-the-room", "on-call"] as const;
