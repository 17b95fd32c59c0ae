import type { Store } from "@rimwise/shop";

/** What can go wrong with one write, and exactly where. */
export const WRITE_FAULTS = [
  "crash-before-commit",
  "crash-after-commit",
  "disk-full",
  "file-locked",
] as const;
export type WriteFault = (typeof WRITE_FAULTS)[number];

/** A store that does what it is told to when the next write comes. */
export type FaultyStore = { readonly store: Store; readonly arm: (fault: WriteFault | undefined) => void };

/** As SQLite names them; the service knows these codes. */
const REFUSALS = {
  "disk-full": { message: "database or disk is full", code: "SQLITE_FULL" },
  "file-locked": { message: "database is locked", code: "SQLITE_BUSY" },
} as const;

/** A process that died answers nothing any more, whatever it was doing. */
class Died extends Error {}

/** A store whose writes can be made to fail. After a crash nothing comes from it, until it is opened again. */
export function faulty(store: Store): FaultyStore {
  let armed: WriteFault | undefined;
  let isDead = false;
  const alive = <Value>(value: Value): Value => {
    if (isDead) throw new Died("the process is dead");
    return value;
  };
  return {
    arm: (fault) => {
      armed = fault;
    },
    store: {
      ...store,
      answer: async (question) => alive(await store.answer(alive(question))),
      findAnswer: async (scope, key) => alive(await store.findAnswer(alive(scope), key)),
      commit: async (batch) => {
        alive(batch);
        switch (armed) {
          case "disk-full":
          case "file-locked": {
            const { message, code } = REFUSALS[armed];
            throw Object.assign(new Error(message), { code });
          }
          case "crash-before-commit":
            isDead = true;
            throw new Died("killed before the commit");
          case "crash-after-commit":
            await store.commit(batch);
            isDead = true;
            throw new Died("killed after the commit");
          case undefined:
            return alive(await store.commit(batch));
        }
      },
    },
  };
}
