declare module "autocannon" {
  import type { EventEmitter } from "node:events";

  /** The part of autocannon that the benchmarks use; the package ships no types. */
  export default function autocannon(options: {
    readonly url: string;
    readonly method: "POST";
    readonly body: string;
    readonly headers: Readonly<Record<string, string>>;
    readonly duration: number;
    readonly connections: number;
    /** Threads that the load comes from; left out, this one. */
    readonly workers?: number;
  }): EventEmitter;
}
