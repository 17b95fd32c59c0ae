/**
 * Version of the computation, part of every plan's digest. Raise it with any change that can
 * change the numbers or findings of a plan.
 */
export const ENGINE_VERSION = "1.1.0";
