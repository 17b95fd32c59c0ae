// Written by packages/client/generate/main.ts. Do not edit.

export const CLIENT_VERSION = "0.1.0";
