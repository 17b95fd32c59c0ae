import type { App } from "../http/app-type.ts";
import { ref } from "../http/reference.ts";
import { type Doors, schemaOf } from "../http/routes.ts";
import type { Signer } from "../signing/signer.ts";
import type { Store } from "../store/store.ts";
import { statusListKeeper } from "./keep.ts";
import { SignedStatusSchema, STATUS_PATH } from "./schema.ts";

type Parts = { readonly signer: Signer; readonly mark: Store["mark"]; readonly publicUrl: string };

export function statusListRoutes(app: App, { answer, now }: Doors, parts: Parts): void {
  app.addSchema(SignedStatusSchema);
  const url = statusListUrl(parts.publicUrl);
  const listAt = statusListKeeper({ answer, mark: parts.mark, signer: parts.signer, url });
  const definition = {
    path: STATUS_PATH,
    operationId: "getApprovalStatus",
    tag: "approvals",
    summary: "The signed list of settings whose sheets must no longer be believed",
  };
  app.get(
    definition.path,
    {
      config: { scope: "public", operation: "act" },
      schema: schemaOf(definition, { response: { 200: ref(SignedStatusSchema) } }),
    },
    async (_request, reply) => reply.type("application/json; charset=utf-8").send(await listAt(now())),
  );
}

/** Where the list is read. */
export function statusListUrl(publicUrl: string): string {
  return `${publicUrl}${STATUS_PATH}`;
}
