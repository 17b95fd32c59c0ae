import { ENGINE_VERSION } from "@rimwise/domain";

/**
 * Version of how bits are looked up: words, facets, synonyms and what is due. Raise it with any change that gives a stored bit other
 * query columns; a test compares their digest.
 */
export const INDEX_VERSION = "2";

/** What the columns rest on: ceilings and clearances are the engine's. */
export const INDEX_AND_ENGINE = `${INDEX_VERSION} on ${ENGINE_VERSION}`;
