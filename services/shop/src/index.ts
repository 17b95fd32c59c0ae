export { type AppParts, buildApp } from "./app.ts";
export { type Config, ConfigError, readConfig, SETTINGS } from "./config.ts";
export type { App } from "./http/app-type.ts";
export { grantFirstKey } from "./keys/first-key.ts";
export { SCOPES, type Scope } from "./keys/scopes.ts";
export type { ApiDocument } from "./openapi/document.ts";
export { PROBLEMS, type ProblemCode } from "./problems/codes.ts";
export { MigrationError, migrate } from "./store/migrate.ts";
export { openStore, type Store } from "./store/open.ts";
