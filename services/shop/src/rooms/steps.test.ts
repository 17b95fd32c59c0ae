import { expect, test } from "vitest";
import { newBit, STAMP } from "../../testing/new-bit.ts";
import { describeOnPostgresql } from "../../testing/one-engine.ts";
import { openOwnStore } from "../../testing/own-store.ts";
import type { Step, Store } from "../store/store.ts";
import { openShopStore } from "./store.ts";

const add = ({ commit }: Store, id: string) => commit({ stamp: STAMP, changes: newBit(id).changes });

/** A store, and its steps as they are heard. */
async function heardStore() {
  const opened = await openOwnStore();
  const steps: Step[] = [];
  opened.store.hearSteps?.((step) => void steps.push(step));
  return { ...opened, steps };
}

describeOnPostgresql("the steps of a process", () => {
  test("lead from the mark before a commit to the one after it, and name the types of what changed", async () => {
    const { store, steps } = await heardStore();
    const marks = [await store.mark()];
    for (const id of ["bit_1", "bit_2"]) {
      await add(store, id);
      marks.push(await store.mark());
    }
    const types = new Set(["bit"]);
    const [first, second, third] = marks;
    expect(steps).toEqual([
      { from: first, to: second, types },
      { from: second, to: third, types },
    ]);
  });

  test("of those who came together are one", async () => {
    const { store, steps } = await heardStore();
    const before = await store.mark();
    await Promise.all(["bit_1", "bit_2", "bit_3"].map((id) => add(store, id)));
    expect(steps).toEqual([{ from: before, to: await store.mark(), types: new Set(["bit"]) }]);
  });

  test("begin where another process ended, so that what it wrote is in none of them", async () => {
    const { store, file, steps } = await heardStore();
    const other = await openShopStore(file);
    await add(store, "bit_1");
    await add(other, "bit_2");
    const between = await store.mark();
    await add(store, "bit_3");
    await other.close();
    expect(steps).toHaveLength(2);
    expect(steps[1]).toMatchObject({ from: between, to: await store.mark() });
    expect(steps[0]?.to).not.toBe(between);
  });

  test("are not made by what is refused", async () => {
    const { store, steps } = await heardStore();
    await add(store, "bit_1");
    expect(await add(store, "bit_1")).toMatchObject({ kind: "conflict" });
    expect(steps).toHaveLength(1);
  });
});
