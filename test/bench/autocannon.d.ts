declare module "autocannon" {
  import type { EventEmitter } from "node:events";

  /** The part of autocannon that the benchmarks use; the package ships no types. */
  export default function autocannon(options: {
    readonly url: string;
    readonly method: "GET" | "POST";
    readonly body?: string;
    readonly headers: Readonly<Record<string, string>>;
    /** Seconds of load; without it, `amount` requests. */
    readonly duration?: number;
    readonly amount?: number;
    readonly connections: number;
    /** Threads that the load comes from. Default: this one. */
    readonly workers?: number;
  }): EventEmitter;
}
