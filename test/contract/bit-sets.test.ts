import { describe, expect, test } from "vitest";
import { addBit, made } from "./crib.ts";
import { sendFile } from "./import-files.ts";
import { kitchenBits, kitchenJob } from "./kitchen.ts";
import { createJob, kitchenShop } from "./kitchen-shop.ts";

const kitchen = kitchenShop();

const setsNamed = async (name: string) => {
  const { body } = await kitchen.shop.ask("GET", "/v1/stock/sets?limit=200");
  return body.data.filter(({ setName }: { setName: string }) => setName === name);
};

/** A cope and its stick in a set of their own. */
async function pairIn(setName: string) {
  const { cope, stick } = kitchenBits(kitchen.ids.radiusMm);
  return {
    cope: await addBit(kitchen.shop, { ...cope, setName }),
    stick: await addBit(kitchen.shop, { ...stick, setName }),
  };
}

describe("bits entered as a set", () => {
  test("are listed together, each set once, and found by its name", async () => {
    const { cope, stick } = await pairIn("Doors, 19 mm");
    const [set, ...others] = await setsNamed("Doors, 19 mm");
    expect(others).toEqual([]);
    expect(set.bits.map(({ id }: { id: string }) => id)).toEqual([cope.id, stick.id]);
    expect(set).toMatchObject({ isSharpenedApart: false, findings: [{ severity: "note" }] });
    const { body } = await kitchen.shop.ask("GET", "/v1/bits?setName=Doors%2C%2019%20mm");
    expect(body.data.map(({ id }: { id: string }) => id)).toEqual([cope.id, stick.id]);
  });

  test("warn when one of them was sharpened alone, and no longer when the other has followed", async () => {
    const { cope, stick } = await pairIn("Doors of the hall");
    // Half a millimetre off the diameter with the bearing as it was: a groove or tongue a quarter of a millimetre shorter.
    const shorter = ({ form }: { form: { diameterMm: number; grooveDepthMm: number } }) => ({
      form: { ...form, diameterMm: form.diameterMm - 0.5, grooveDepthMm: form.grooveDepthMm - 0.25 },
    });
    await made(kitchen.shop, `/v1/bits/${stick.id}/sharpenings`, shorter(stick));
    const [apart] = await setsNamed("Doors of the hall");
    expect(apart.isSharpenedApart).toBe(true);
    expect(apart.findings).toMatchObject([{ severity: "care", bitIds: [cope.id, stick.id] }]);
    expect(apart.findings[0].text).toMatch(/0\.25 mm/);
    await made(kitchen.shop, `/v1/bits/${cope.id}/sharpenings`, shorter(cope));
    const [together] = await setsNamed("Doors of the hall");
    expect(together).toMatchObject({ isSharpenedApart: false, findings: [{ severity: "note" }] });
  });

  test("come in one file, a row each", async () => {
    const { radiusMm } = kitchen.ids;
    const row = (kind: string) =>
      `${kind} of the file,${kind},41.3,6.35,9.53,3.2,bearing,${radiusMm},12.7,2,File set`;
    const header =
      "name,kind,diameterMm,grooveWidthMm,grooveDepthMm,landMm,pilot,radiusMm,shankDiameterMm,wings,setName";
    const { body } = await sendFile(kitchen.shop, [header, row("cope"), row("stick")].join("\n"));
    expect(body).toMatchObject({ created: 2, refused: 0 });
    const [set] = await setsNamed("File set");
    expect(set.bits).toHaveLength(2);
  });

  test("are taken together for a joint, though bits of other sets would fit as well", async () => {
    const one = await pairIn("Set one");
    const { cope, stick } = kitchenBits(kitchen.ids.radiusMm);
    // Between the two in age: as near, but of no set.
    await addBit(kitchen.shop, cope);
    await addBit(kitchen.shop, stick);
    const wanted = (half: string) => ({
      ...{ by: "joint", joint: "cope-and-stick", half },
      sizes: { radiusMm: kitchen.ids.radiusMm },
    });
    const [rail] = kitchenJob(kitchen.ids).parts;
    const cuts = [
      { along: "both-ends", wanted: wanted("cope") },
      { along: "one-side", wanted: wanted("stick") },
    ];
    const { work } = await createJob(kitchen, { parts: [{ ...rail, cuts }] });
    const taken = work.cuts.map(({ bitId }: { bitId: string }) => bitId);
    expect(taken).toEqual([one.cope.id, one.stick.id]);
  });
});
