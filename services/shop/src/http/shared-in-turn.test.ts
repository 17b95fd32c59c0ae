import { setImmediate as nextTurn } from "node:timers/promises";
import { describe, expect, it } from "vitest";
import { sharedInTurn } from "./shared-in-turn.ts";

function counted() {
  const asked: string[] = [];
  const look = sharedInTurn(async (id: string) => {
    asked.push(id);
    return `${id} ${asked.length}`;
  });
  return { asked, look };
}

describe("a look-up that is shared in a turn", () => {
  it("is made once for all who ask for the same, and once for each that is asked for", async () => {
    const { asked, look } = counted();
    expect(await Promise.all([look("a"), look("b"), look("a")])).toEqual(["a 1", "b 2", "a 1"]);
    expect(asked).toEqual(["a", "b"]);
  });

  it("is made anew in the next turn", async () => {
    const { look } = counted();
    expect(await look("a")).toBe("a 1");
    await nextTurn();
    expect(await look("a")).toBe("a 2");
  });

  it("is forgotten before what is put off to the end of the turn after it", async () => {
    const { look } = counted();
    const written = new Promise<string>((resolve) => {
      void look("a");
      setImmediate(() => resolve(look("a")));
    });
    expect(await written).toBe("a 2");
  });
});
