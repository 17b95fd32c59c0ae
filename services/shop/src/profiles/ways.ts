import type { Turns } from "../http/turns.ts";
import type { Answer } from "../store/store.ts";

/** How a search is made: what is kept is asked, others have their turn, and it is then. */
export type Ways = { readonly answer: Answer; readonly turns: Turns; readonly at: string };
