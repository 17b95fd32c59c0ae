import { expect, test } from "vitest";
import type { Rows } from "./answer.ts";
import { rememberRows } from "./remember-rows.ts";

function asked(answer: (id: unknown) => unknown[][]) {
  let mark = 0;
  let looks = 0;
  const rows: Rows = ({ id }) => {
    looks += 1;
    return answer(id);
  };
  const remembering = rememberRows(() => mark)(rows);
  return { rows: remembering, looks: () => looks, change: () => (mark += 1) };
}

test("the same question is answered from memory until something was committed", () => {
  const query = asked((id) => [[id, "Cove"]]);
  query.rows({ id: "a" });
  expect(query.rows({ id: "a" })).toEqual([["a", "Cove"]]);
  expect(query.rows({ id: "b" })).toEqual([["b", "Cove"]]);
  expect(query.looks()).toBe(2);
  query.change();
  query.rows({ id: "a" });
  expect(query.looks()).toBe(3);
});

test("pictures, long texts and long lists are not kept in memory", () => {
  for (const answer of [
    [[Buffer.from("picture")]],
    [["x".repeat(20_000)]],
    Array.from({ length: 5 }, () => ["row"]),
  ]) {
    const query = asked(() => answer);
    query.rows({ id: "a" });
    query.rows({ id: "a" });
    expect(query.looks()).toBe(2);
  }
});

test("somebody who asks for ever new things does not fill the memory", () => {
  const query = asked((id) => [[id]]);
  for (let id = 0; id < 300; id += 1) query.rows({ id });
  query.rows({ id: 0 });
  expect(query.looks()).toBe(301);
});
