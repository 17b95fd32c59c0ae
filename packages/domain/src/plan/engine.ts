/**
 * Version of the computation, part of every plan's digest. Raise it with any change that can
 * change the numbers or findings of a plan: a test compares their digest, and approvals in force are judged again.
 */
export const ENGINE_VERSION = "1.8.0";
