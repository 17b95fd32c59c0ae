import { createClient, ValidationFailed } from "@rimwise/client";
import { describe, expect, it } from "vitest";
import { openShopWithClient } from "./shop-client.ts";

const CSV =
  "name,kind,diameterMm,cuttingLengthMm,shankDiameterMm,wings\nStraight,straight,1/2 in,30,12.7,2\n";

describe("files of bits, through the client", () => {
  it.each([
    ["text", () => CSV],
    ["a blob", () => new Blob([CSV])],
    ["a stream", () => new Blob([CSV]).stream()],
  ])("come in as %s and go out as text", async (_what, data) => {
    const { client } = await openShopWithClient();
    const options = { query: { mode: "row-by-row" as const }, reason: "The new rack" };
    const report = await client.bits.import({ contentType: "text/csv", data: data() }, options);
    expect(report).toMatchObject({ created: 1, mode: "row-by-row" });
    const [exported = ""] = [await client.bits.export({ query: { format: "ndjson" } })];
    expect(JSON.parse(exported)).toMatchObject({ name: "Straight", form: { diameterMm: 12.7 } });
    const again = await client.bits.import({ contentType: "application/x-ndjson", data: exported });
    expect(again).toMatchObject({ unchanged: 1 });
    expect((await client.imports.get(report.importId ?? "")).newIds).toBe(1);
  });

  it("that cannot be taken are refused with the report", async () => {
    const { client } = await openShopWithClient();
    const file = { contentType: "text/csv", data: CSV.replace("12.7", "99") } as const;
    const refused: unknown = await client.bits.import(file).catch((error: unknown) => error);
    if (!(refused instanceof ValidationFailed)) throw new Error("the file was taken");
    expect(refused.code).toBe("import-not-valid");
    expect(refused.problem?.report?.faults).toMatchObject([{ line: 2, column: "shankDiameterMm" }]);
  });

  it("are sent once if they are streams, which are gone then", async () => {
    let attempts = 0;
    const client = createClient({
      baseUrl: "http://shop.test",
      fetch: async () => {
        attempts += 1;
        throw new TypeError("connection reset");
      },
    });
    const data = new Blob([CSV]).stream();
    await expect(client.bits.import({ contentType: "text/csv", data })).rejects.toThrow();
    expect(attempts).toBe(1);
  });
});
