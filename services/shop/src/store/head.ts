/** The latest event of a history: its sequence and its hash, which covers all events before it. */
export type ChainHead = { readonly sequence: number; readonly hash: string };
