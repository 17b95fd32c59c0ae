import { describe, expect, it } from "vitest";
import { shared } from "./mark.ts";

/** A question whose answers, numbered as they were asked, are given when the test says so. */
function question() {
  const answers: ((answer: number) => void)[] = [];
  const asked = shared(() => new Promise<number>((resolve) => answers.push(resolve)));
  const turn = () => new Promise((resolve) => setImmediate(resolve));
  return { asked, answers, turn };
}

describe("a question that is shared", () => {
  it("is asked once for all who came before it", async () => {
    const { asked, answers, turn } = question();
    const all = [asked(), asked(), asked()];
    await turn();
    expect(answers).toHaveLength(1);
    answers[0]?.(7);
    expect(await Promise.all(all)).toEqual([7, 7, 7]);
  });

  it("is asked again for those who came while it was under way, and for them once", async () => {
    const { asked, answers, turn } = question();
    const first = asked();
    await turn();
    const later = [asked(), asked()];
    await turn();
    expect(answers).toHaveLength(1);
    answers[0]?.(1);
    expect(await first).toBe(1);
    await turn();
    expect(answers).toHaveLength(2);
    answers[1]?.(2);
    expect(await Promise.all(later)).toEqual([2, 2]);
  });

  it("that fails does so for those who waited for it, and not for the next", async () => {
    let times = 0;
    const asked = shared(async () => {
      times += 1;
      if (times === 1) throw new Error("away");
      return times;
    });
    const [first, second] = [asked(), asked()];
    await expect(first).rejects.toThrow("away");
    await expect(second).rejects.toThrow("away");
    expect(await asked()).toBe(2);
  });
});
