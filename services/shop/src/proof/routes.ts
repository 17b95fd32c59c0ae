import type { App } from "../http/app-type.ts";
import { ref } from "../http/reference.ts";
import { type ProofSources, proveWithKept } from "./prove.ts";
import { MOST_CHECKED, ProofRequestSchema, ProofSchema } from "./schema.ts";

export function proofRoutes(app: App, sources: ProofSources): void {
  for (const schema of [ProofRequestSchema, ProofSchema]) app.addSchema(schema);

  app.post(
    "/v1/events/verify",
    {
      config: { scope: "events:read", operation: "act" },
      // Nothing to say is said by an empty body too.
      preValidation: async (request) => {
        request.body ??= {};
      },
      schema: {
        operationId: "verifyEvents",
        tags: ["events"],
        summary: "Check that nobody has altered the history",
        description:
          "Recomputes the chain of hashes from what is kept, and checks every signed checkpoint against it. Every record is held against the last event about it, and the newest checkpoint that is kept beside the signing keys against the history. A history that was rewritten as a whole shows only against what was kept elsewhere: give the `head` of a backup's manifest, or a checkpoint's `sequence` and `hash`.",
        body: ref(ProofRequestSchema),
        response: { 200: ref(ProofSchema) },
      },
    },
    ({ body: { fromSequence = 1, head } }) => proveWithKept(fromSequence, MOST_CHECKED, head, sources),
  );
}
