import type { Waste } from "../cut/base-setup.ts";

/** A bit of the rack that takes the wood out first. */
export type WasteBit = { readonly id: string; readonly name: string; readonly diameterMm: number };

/** The groove to be cut before the bit of the plan. `makePlan` knows no rack: a bit is named by whoever presents the plan. */
export type WasteGroove = Waste & { readonly bit?: WasteBit };
