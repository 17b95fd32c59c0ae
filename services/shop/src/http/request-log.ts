import type { FastifyBaseLogger } from "fastify";

type Bindings = Parameters<FastifyBaseLogger["child"]>[0];
type ChildOptions = Parameters<FastifyBaseLogger["child"]>[1];
type Level = "fatal" | "error" | "warn" | "info" | "debug" | "trace" | "silent";

/** The log of one request, made when something is said in it: most requests are answered without, and making one is not cheap. */
class RequestLog implements FastifyBaseLogger {
  readonly #parent: FastifyBaseLogger;
  readonly #bindings: Bindings;
  readonly #options: ChildOptions;
  #made: FastifyBaseLogger | undefined;

  constructor(parent: FastifyBaseLogger, bindings: Bindings, options: ChildOptions) {
    this.#parent = parent;
    this.#bindings = bindings;
    this.#options = options;
  }

  get level(): string {
    return this.#log().level;
  }

  child(bindings: Bindings, options?: ChildOptions): FastifyBaseLogger {
    return this.#log().child(bindings, options);
  }

  fatal(...said: readonly unknown[]): void {
    this.#say("fatal", said);
  }

  error(...said: readonly unknown[]): void {
    this.#say("error", said);
  }

  warn(...said: readonly unknown[]): void {
    this.#say("warn", said);
  }

  info(...said: readonly unknown[]): void {
    this.#say("info", said);
  }

  debug(...said: readonly unknown[]): void {
    this.#say("debug", said);
  }

  trace(...said: readonly unknown[]): void {
    this.#say("trace", said);
  }

  silent(...said: readonly unknown[]): void {
    this.#say("silent", said);
  }

  #log(): FastifyBaseLogger {
    this.#made ??= this.#parent.child(this.#bindings, this.#options);
    return this.#made;
  }

  #say(level: Level, said: readonly unknown[]): void {
    const log = this.#log();
    Reflect.apply(log[level], log, said);
  }
}

/** Gives a request its log. */
export function requestLog(
  parent: FastifyBaseLogger,
  bindings: Bindings,
  options: ChildOptions,
): FastifyBaseLogger {
  return new RequestLog(parent, bindings, options);
}
