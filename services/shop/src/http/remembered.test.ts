import { describe, expect, it } from "vitest";
import { remembered } from "./remembered.ts";

function counted(mark: (() => number) | undefined) {
  const asked: string[] = [];
  const { recall, look } = remembered<{ found: string }>(mark);
  const find = (id: string) => async () => {
    asked.push(id);
    return { found: `${id} ${asked.length}` };
  };
  const get = async (id: string) => (recall(id) ?? (await look(id, find(id)))).found;
  return { asked, get };
}

describe("a look-up that is remembered", () => {
  it("is made once for each thing that is asked for, as long as nothing is committed", async () => {
    const { asked, get } = counted(() => 1);
    expect([await get("a"), await get("b"), await get("a")]).toEqual(["a 1", "b 2", "a 1"]);
    expect(asked).toEqual(["a", "b"]);
  });

  it("is made again after a commit", async () => {
    let commits = 0;
    const { get } = counted(() => commits);
    expect(await get("a")).toBe("a 1");
    commits += 1;
    expect(await get("a")).toBe("a 2");
  });

  it("is not remembered when something was committed while it was made", async () => {
    let commits = 0;
    const { recall, look } = remembered<{ id: string }>(() => commits);
    await look("a", async () => {
      commits += 1;
      return { id: "a" };
    });
    expect(recall("a")).toBeUndefined();
  });

  it("is made every time for a store that cannot say whether anything changed", async () => {
    const { get } = counted(undefined);
    expect([await get("a"), await get("a")]).toEqual(["a 1", "a 2"]);
  });

  it("is not remembered when it is not worth it", async () => {
    const { recall, look } = remembered<{ text: string }>(
      () => 1,
      ({ text }) => text.length < 3,
    );
    for (const text of ["ab", "abc"]) await look(text, async () => ({ text }));
    expect([recall("ab"), recall("abc")]).toEqual([{ text: "ab" }, undefined]);
  });

  it("forgets rather than fill the memory", async () => {
    const { asked, get } = counted(() => 1);
    for (let index = 0; index < 3000; index += 1) await get(`guess ${index}`);
    expect(await get("guess 0")).toBe("guess 0 3001");
    expect(asked).toHaveLength(3001);
  });
});
