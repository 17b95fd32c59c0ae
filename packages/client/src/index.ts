export type { Answer, AnswerDetails, Delivered } from "./answer.ts";
export { type Client, createClient, type OtherRequest } from "./client.ts";
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
export type * from "./generated/models.ts";
export type { LogEntry } from "./log.ts";
export type {
  CallOptions,
  ChangeOptions,
  ConditionalOptions,
  FileBody,
  Loose,
  Query,
  RecordVersion,
  StreamOptions,
  WriteOptions,
} from "./operation.ts";
export type { ClientOptions, Fetch, KeySource } from "./options.ts";
export type { Page, Pages } from "./pages.ts";
export type { Asking, FieldOf, PartsOf, Whole } from "./parts.ts";
export { NOT_MODIFIED, type NotModified } from "./read.ts";
export {
  type ExpectedUse,
  type SheetFault,
  type SheetOptions,
  type SheetVerdict,
  verifySheet,
} from "./verify-sheet.ts";
