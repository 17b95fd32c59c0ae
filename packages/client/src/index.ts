export type { Answer, AnswerDetails, Delivered } from "./answer.ts";
export { type Client, createClient } from "./client.ts";
export {
  ApiError,
  CallError,
  Conflict,
  ConnectionError,
  type FailedCall,
  Forbidden,
  NotFound,
  PreconditionFailed,
  RateLimited,
  TimeoutError,
  Unauthorized,
  ValidationFailed,
} from "./errors.ts";
export type * from "./generated/types.gen.ts";
export type { LogEntry } from "./log.ts";
export type {
  CallOptions,
  ChangeOptions,
  FileBody,
  Version,
  WriteOptions,
} from "./operation.ts";
export type { ClientOptions, Fetch } from "./options.ts";
export type { Page, Pages } from "./pages.ts";
export {
  type Sheet,
  type SheetFault,
  type SheetOptions,
  type SheetVerdict,
  verifySheet,
} from "./verify-sheet.ts";
