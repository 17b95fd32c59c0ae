import { describe, expect, test } from "vitest";
import { grouped } from "./group.ts";

describe("orders that wait together", () => {
  test("are settled together, each with its own result", async () => {
    const groups: number[] = [];
    const double = grouped(async (orders: readonly number[]) => {
      groups.push(orders.length);
      return orders.map((order) => ({ value: order * 2 }));
    });
    expect(await Promise.all([1, 2, 3].map(double))).toEqual([2, 4, 6]);
    expect(await double(4)).toBe(8);
    expect(groups).toEqual([3, 1]);
  });

  test("are at most a hundred to a group, and none is left behind", async () => {
    const groups: number[] = [];
    const same = grouped(async (orders: readonly number[]) => {
      groups.push(orders.length);
      return orders.map((value) => ({ value }));
    });
    const orders = Array.from({ length: 250 }, (_, index) => index);
    expect(await Promise.all(orders.map(same))).toEqual(orders);
    expect(groups).toEqual([100, 100, 50]);
  });

  test("fail alone if the error is one order's own, and all if the transaction fails", async () => {
    const even = grouped(async (orders: readonly number[]) => {
      if (orders.includes(13)) throw new Error("the disk is full");
      return orders.map((order) =>
        order % 2 === 0 ? { value: order } : { error: new Error(`${order} is odd`) },
      );
    });
    const alone = await Promise.allSettled([2, 3, 4].map(even));
    expect(alone.map(({ status }) => status)).toEqual(["fulfilled", "rejected", "fulfilled"]);
    const all = await Promise.allSettled([2, 13, 4].map(even));
    expect(all.map(({ status }) => status)).toEqual(["rejected", "rejected", "rejected"]);
    expect(await even(6)).toBe(6);
  });
});
