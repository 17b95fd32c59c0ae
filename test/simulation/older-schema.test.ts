import { expect, onTestFinished, test } from "vitest";
import { behindTheService } from "../../services/shop/testing/behind-the-service.ts";
import { hold } from "./invariants.ts";
import { OLDER_LEVELS, takesUpOlderSchema } from "./older-schema.ts";
import { openWorld } from "./world.ts";

test("a shop is taken back to every level since the signing keys are in the database", () => {
  expect(OLDER_LEVELS.slice(0, 5)).toEqual([
    "0026-signing-keys-in-the-database.sql",
    "0027-leases.sql",
    "0028-jobs.sql",
    "0029-profiles.sql",
    "0030-bit-sets.sql",
  ]);
});

test.each(OLDER_LEVELS)("started after %s, everything is there and as the model says", async (level) => {
  const world = await openWorld();
  onTestFinished(() => world.end());
  await world.restart(() => takesUpOlderSchema(world.database, level));
  await hold(world, world.model);
});

test("what neither a migration nor the start makes again is missed", async () => {
  const world = await openWorld();
  onTestFinished(() => world.end());
  await behindTheService({ file: world.database }, ({ run }) => run("UPDATE bits SET set_name = 'panels'"));
  await world.restart(async () => {
    await expect(takesUpOlderSchema(world.database, "0029-profiles.sql")).rejects.toThrow(
      `started after 0029-profiles.sql, bits has [1] with set_name null, not "panels"`,
    );
  });
});
