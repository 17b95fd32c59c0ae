import { isAbsolute, resolve } from "node:path";
import { Ajv, type ErrorObject } from "ajv";
import Type, { type Static } from "typebox";
import { lazily } from "./http/lazily.ts";
import { isFirstKey } from "./keys/key-text.ts";
import { fieldFaults } from "./problems/from-ajv.ts";
import { SEALING_KEY } from "./signing/sealing.ts";
import { isPostgresql } from "./store/open.ts";

/** How the service is run. Read once, at the start. */
export type Config = {
  readonly host: string;
  readonly port: number;
  /** Absolute path of the SQLite file, `:memory:`, or a PostgreSQL URL, which may hold a password: see `shownDatabase`. */
  readonly database: string;
  /** Absolute path of the file with the key that the signing keys are sealed with, or `:memory:`, which keeps it no longer than the process. */
  readonly signingKeys: string;
  /** That key itself, in place of the file. */
  readonly sealingKey: string | undefined;
  /** Start although keys that the shop has signed with cannot be opened or are gone. */
  readonly acceptLostSigningKeys: boolean;
  /** Absolute path of a file that every checkpoint is appended to; without one they are sent nowhere. */
  readonly checkpointsSentTo: string | undefined;
  /** Where people and programs reach the service; what labels and sheets lead to. */
  readonly publicUrl: string;
  /** IANA name of the time zone of the shop, whose days labels name. */
  readonly timeZone: string;
  /** The first manager's key of a new database; made and printed if absent. */
  readonly firstKey: string | undefined;
  readonly logLevel: string;
  readonly corsOrigins: readonly string[];
  /** Requests a minute of one key, or of one address with a bad one. */
  readonly rateLimitPerMinute: number;
  /** Requests a minute of one address for what needs no key. */
  readonly publicRateLimitPerMinute: number;
  readonly trustedProxies: readonly string[];
  /** How late the event loop may run before requests are refused; 0 never refuses. */
  readonly busyAfterMs: number;
  readonly backups: BackupSettings;
};

/** Where backups go that are asked for over HTTP or made by the clock. */
export type BackupSettings = {
  /** Absolute path of a folder; without one no such backups are made. */
  readonly folder: string | undefined;
  /** A backup is made when the newest is so old; 0 makes none by the clock. */
  readonly everyHours: number;
  /** How many of the service's own stay in the folder. */
  readonly keep: number;
};

type Environment = Readonly<Record<string, string | undefined>>;

const IN_MEMORY = ":memory:";
/** The file that opens the signing keys when the database is no file that it could be beside. */
const KEYS_WITHOUT_FILE = "rimwise.signing-keys.json";
const PREFIX = "RIMWISE_";
const LISTS: readonly string[] = ["RIMWISE_CORS_ORIGINS", "RIMWISE_TRUSTED_PROXIES"];

/** Every setting, with its default. `.env.example` lists the same ones. */
export const SETTINGS = Type.Object(
  {
    RIMWISE_HOST: Type.String({ default: "127.0.0.1", maxLength: 255 }),
    RIMWISE_PORT: Type.Integer({ default: 8080, minimum: 0, maximum: 65535 }),
    RIMWISE_PUBLIC_URL: Type.Optional(
      Type.String({
        pattern: "^https?://[^\\s/?#]+(/[^\\s/?#]+)*$",
        maxLength: 255,
        description:
          "an address such as https://shop.example or https://shop.example/rimwise, without a slash at its end",
      }),
    ),
    RIMWISE_TIME_ZONE: Type.Optional(
      Type.String({
        format: "time-zone",
        description: "a time zone of the IANA database, such as Europe/Oslo",
      }),
    ),
    RIMWISE_DATABASE: Type.String({ default: "rimwise.sqlite", maxLength: 4096 }),
    RIMWISE_SIGNING_KEYS: Type.Optional(Type.String({ maxLength: 4096 })),
    RIMWISE_SEALING_KEY: Type.Optional(
      Type.String({
        pattern: SEALING_KEY,
        description: "64 hexadecimal digits that nobody can guess, such as `openssl rand -hex 32` prints",
      }),
    ),
    RIMWISE_ACCEPT_LOST_SIGNING_KEYS: Type.Enum(["yes", "no"], { type: "string", default: "no" }),
    RIMWISE_CHECKPOINTS_SENT_TO: Type.Optional(Type.String({ maxLength: 4096 })),
    RIMWISE_FIRST_KEY: Type.Optional(
      Type.String({
        format: "key",
        description:
          "32 to 255 visible ASCII characters that nobody can guess, at least 10 of them different, or a whole key of this service's own",
      }),
    ),
    RIMWISE_LOG_LEVEL: Type.Enum(["fatal", "error", "warn", "info", "debug", "trace", "silent"], {
      type: "string",
      default: "info",
    }),
    RIMWISE_CORS_ORIGINS: listOf("^https?://[^/\\s]+$", "origins such as https://shop.example"),
    RIMWISE_RATE_LIMIT_PER_MINUTE: Type.Integer({ default: 6000, minimum: 1, maximum: 1_000_000 }),
    RIMWISE_PUBLIC_RATE_LIMIT_PER_MINUTE: Type.Integer({ default: 3000, minimum: 1, maximum: 1_000_000 }),
    RIMWISE_TRUSTED_PROXIES: listOf("^[0-9A-Fa-f.:]+(/\\d+)?$", "addresses or networks such as 10.0.0.0/8"),
    RIMWISE_BUSY_AFTER_MS: Type.Integer({ default: 1000, minimum: 0, maximum: 600_000 }),
    RIMWISE_BACKUP_FOLDER: Type.Optional(Type.String({ maxLength: 4096 })),
    RIMWISE_BACKUP_EVERY_HOURS: Type.Integer({ default: 24, minimum: 0, maximum: 8784 }),
    RIMWISE_BACKUP_KEEP: Type.Integer({ default: 30, minimum: 1, maximum: 10_000 }),
  },
  { additionalProperties: false },
);

/** Thrown for settings that cannot be used; the message names every one of them. */
export class ConfigError extends Error {}

/**
 * The configuration in an environment. An empty setting counts as absent. A setting this service does not know, or a
 * value it cannot use, is refused together with all others. Relative paths start where the command was given.
 */
export function readConfig(environment: Environment = process.env): Config {
  const settings = readSettings(environment);
  const startedIn = folderOfCommand(environment);
  const database = databaseFrom(startedIn, settings.RIMWISE_DATABASE);
  return {
    host: settings.RIMWISE_HOST,
    port: settings.RIMWISE_PORT,
    database,
    signingKeys: pathFrom(startedIn, settings.RIMWISE_SIGNING_KEYS ?? keysBeside(database)),
    sealingKey: settings.RIMWISE_SEALING_KEY,
    acceptLostSigningKeys: settings.RIMWISE_ACCEPT_LOST_SIGNING_KEYS === "yes",
    checkpointsSentTo:
      settings.RIMWISE_CHECKPOINTS_SENT_TO && pathFrom(startedIn, settings.RIMWISE_CHECKPOINTS_SENT_TO),
    publicUrl: publicUrlOf(settings),
    timeZone: settings.RIMWISE_TIME_ZONE ?? Intl.DateTimeFormat().resolvedOptions().timeZone,
    firstKey: settings.RIMWISE_FIRST_KEY,
    logLevel: settings.RIMWISE_LOG_LEVEL,
    corsOrigins: settings.RIMWISE_CORS_ORIGINS,
    rateLimitPerMinute: settings.RIMWISE_RATE_LIMIT_PER_MINUTE,
    publicRateLimitPerMinute: settings.RIMWISE_PUBLIC_RATE_LIMIT_PER_MINUTE,
    trustedProxies: settings.RIMWISE_TRUSTED_PROXIES,
    busyAfterMs: settings.RIMWISE_BUSY_AFTER_MS,
    backups: {
      folder: settings.RIMWISE_BACKUP_FOLDER && pathFrom(startedIn, settings.RIMWISE_BACKUP_FOLDER),
      everyHours: settings.RIMWISE_BACKUP_EVERY_HOURS,
      keep: settings.RIMWISE_BACKUP_KEEP,
    },
  };
}

/** Where the command was given: a package manager runs it somewhere else, and says so. */
export function folderOfCommand(environment: Environment = process.env): string {
  return environment["INIT_CWD"] ?? process.cwd();
}

function publicUrlOf({ RIMWISE_PUBLIC_URL, RIMWISE_HOST, RIMWISE_PORT }: Static<typeof SETTINGS>): string {
  const host = RIMWISE_HOST.includes(":") ? `[${RIMWISE_HOST}]` : RIMWISE_HOST;
  return RIMWISE_PUBLIC_URL ?? `http://${host}:${RIMWISE_PORT}`;
}

function listOf(pattern: string, description: string) {
  return Type.Array(Type.String({ pattern, description }), { default: [] });
}

const settingsCheck = lazily(() => {
  const ajv = new Ajv({
    allErrors: true,
    verbose: true,
    coerceTypes: true,
    useDefaults: true,
    // Whether the settings are a schema at all is for tests to say, not for every start.
    validateSchema: false,
    formats: { key: isFirstKey, "time-zone": isTimeZone },
  });
  return ajv.compile<Static<typeof SETTINGS>>(SETTINGS);
});

function readSettings(environment: Environment): Static<typeof SETTINGS> {
  const isSettings = settingsCheck();
  const settings: unknown = ownSettings(environment);
  if (isSettings(settings)) return settings;
  throw new ConfigError(faultLines(isSettings.errors ?? []));
}

function ownSettings(environment: Environment): Record<string, unknown> {
  const own = Object.entries(environment).filter(([name, value]) => name.startsWith(PREFIX) && value !== "");
  return Object.fromEntries(own.map(([name, value]) => [name, LISTS.includes(name) ? listIn(value) : value]));
}

function isTimeZone(name: string): boolean {
  try {
    Intl.DateTimeFormat("en", { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

function listIn(value: string | undefined): string[] {
  return (value ?? "").split(",").map((item) => item.trim());
}

/** One line for each setting: never its value, which may be a secret. */
function faultLines(errors: readonly ErrorObject[]): string {
  const lines = fieldFaults(errors, "header").map(
    ({ pointer, message, accepted }) => `${pointer.slice(1)}: ${message} Accepted: ${accepted}.`,
  );
  return `These settings cannot be used:\n${lines.map((line) => `  ${line}`).join("\n")}`;
}

function databaseFrom(startedIn: string, setting: string): string {
  return isPostgresql(setting) ? setting : pathFrom(startedIn, setting);
}

function pathFrom(startedIn: string, setting: string): string {
  return setting === IN_MEMORY || isAbsolute(setting) ? setting : resolve(startedIn, setting);
}

function keysBeside(database: string): string {
  if (isPostgresql(database)) return KEYS_WITHOUT_FILE;
  return database === IN_MEMORY ? IN_MEMORY : `${database}.signing-keys.json`;
}
