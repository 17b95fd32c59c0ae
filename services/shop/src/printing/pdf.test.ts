import type { Scene } from "@rimwise/drawing";
import { expect, test } from "vitest";
import { pdfOf } from "./pdf.ts";

const PAGE: Scene = {
  widthMm: 148,
  heightMm: 210,
  title: "A page",
  description: "",
  items: [
    {
      kind: "group",
      of: "title",
      items: [{ kind: "text", xMm: 9, yMm: 20, sizeMm: 4, anchor: "start", weight: "bold", text: "A page" }],
    },
  ],
};
const pages = { title: "A page", pages: [PAGE, PAGE] };
const noTurns = async () => {};
const isPdf = (bytes: Buffer) => bytes.subarray(0, 5).toString() === "%PDF-" && bytes.includes("%%EOF");

test("several documents at once are each whole", async () => {
  const made = await Promise.all(
    [pages, { ...pages, title: "Another" }, pages].map((each) => pdfOf(each, noTurns)),
  );
  for (const bytes of made) expect(isPdf(bytes)).toBe(true);
  expect(made[2]?.equals(made[0] ?? Buffer.alloc(0))).toBe(true);
  expect(made[1]?.equals(made[0] ?? Buffer.alloc(0))).toBe(false);
});

test("a document that nobody waits for any more is given up, and the next is made", async () => {
  const gone = async () => {
    throw new Error("nobody waits");
  };
  await expect(pdfOf(pages, gone)).rejects.toThrow("nobody waits");
  expect(isPdf(await pdfOf(pages, noTurns))).toBe(true);
});

test("a page that cannot be drawn is a fault of its document alone", async () => {
  const broken = { title: "Broken", pages: [{ ...PAGE, widthMm: Number.NaN }] };
  const [failed, whole] = await Promise.allSettled([pdfOf(broken, noTurns), pdfOf(pages, noTurns)]);
  expect(failed).toMatchObject({ status: "rejected", reason: { message: expect.stringContaining("PDF") } });
  expect(whole.status).toBe("fulfilled");
});
