import type { Bell } from "./bell.ts";
import type { Kind, RecordOf } from "./kind.ts";
import type { Leases } from "./leases.ts";
import type { Change, Commit, InTransactionRule, KeptAnswer, Stamp } from "./port.ts";
import type { Query, Question } from "./query.ts";

/** What the store needs to know of the rooms above it. */
export type Shape = {
  readonly kinds: readonly Kind[];
  /** In order: later ones see what follows from earlier ones. */
  readonly rules: readonly InTransactionRule[];
  readonly completions: readonly Completion[];
  /** How the query columns of every kind that has some are computed. */
  readonly computed: readonly Computed[];
  readonly derivations: readonly Derivation[];
};

/** Something that is derived from what is kept, with the version of what derives it. */
export type Derivation = {
  readonly name: string;
  /** Where another version is kept, or none, it is derived again when the store is opened. */
  readonly version: string;
  /** Whether query columns rest on it: those of every record are computed again. */
  readonly hasQueryColumns: boolean;
  /** The changes that follow. */
  again(stamp: Stamp): Question<readonly Change[]>;
};

/** How the query columns of a kind's records are computed: again with every change of the record. */
export type Computed<K extends Kind = Kind> = {
  readonly kind: K;
  /** At a change of one of these kinds, the columns of every record are computed again in the same transaction. */
  readonly restOn: readonly Kind[];
  of(record: RecordOf<K>): Question<{ readonly [name: string]: unknown }>;
};

/** Records that are older than what is computed of them: they are completed when the store is opened. */
export type Completion<K extends Kind = Kind> = {
  readonly kind: K;
  readonly incomplete: Query<RecordOf<K>>;
  /** The fields that a record of this age has not. */
  complete(record: RecordOf<K>): Question<Partial<RecordOf<K>>>;
};

/** What the service needs to know before it takes requests. */
export type StoreHealth = {
  readonly database: boolean;
  readonly migrations: boolean;
  readonly disk: boolean;
  readonly writable: boolean;
  /** What is wrong with one of these, if it can be said better than by its name. */
  readonly reason?: string;
};

/** Answers questions about what is kept, as it is now. */
export type Answer = <Result>(question: Question<Result>) => Promise<Result>;

/** The requests of each caller in the window that is open, and how long it still is. */
export type OwnCounts = ReadonlyMap<string, { readonly count: number; readonly leftMs: number }>;

/** Tells the other processes what this one has counted, and gives what they have counted of the same callers. */
export type ExchangeCounts = (own: OwnCounts) => Promise<ReadonlyMap<string, number>>;

/** Something that a monitor may look at: a name in the style of Prometheus, what it says, and its values as they are now, by label. */
export type Measure = {
  readonly name: string;
  readonly help: string;
  readonly values: () => readonly {
    readonly labels: Readonly<Record<string, string>>;
    readonly value: number;
  }[];
};

/** Stands for how far a shop's history reaches: another one after every commit, by whichever process. */
export type Mark = number | string;

/** What a transaction of this process did: from which mark it led to which, nobody else writing in between, and the types of what it changed. */
export type Step = { readonly from: Mark; readonly to: Mark; readonly types: ReadonlySet<string> };

/** The database of one shop behind its one door for writes. Nothing here says which engine it is. */
export type Store = {
  readonly commit: Commit;
  readonly answer: Answer;
  readonly findAnswer: (scope: string, idempotencyKey: string) => Promise<KeptAnswer | undefined>;
  readonly health: () => Promise<StoreHealth>;
  /** The mark as it is now: whoever asks after a commit was acknowledged gets another one than those before it. */
  readonly mark: () => Mark | Promise<Mark>;
  /** Has somebody hear of this process's own steps. Undefined: to look something up again costs next to nothing. */
  readonly hearSteps: ((heard: (step: Step) => void) => void) | undefined;
  /** Rings after each write batch that is on the disk, by whichever process. */
  readonly bell: Bell;
  /** What one process at a time may do. */
  readonly leases: Leases;
  /** What there is to measure of the engine's connections. */
  readonly measures: readonly Measure[];
  /** Undefined: each process counts by itself. */
  readonly exchangeCounts: ExchangeCounts | undefined;
  /**
   * Copies everything, as it is at one moment, into a new file that only its owner reads. Work goes on meanwhile. Undefined: the
   * engine has tools of its own for that.
   */
  readonly copyTo: ((file: string) => Promise<void>) | undefined;
  readonly close: () => Promise<void>;
};
