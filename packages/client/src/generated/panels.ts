// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { CallOptions, Caller } from "../operation.ts";
import type {
  SizePanelsData,
  SizePanelsResponse,
} from "./types.gen.ts";

export function panelsOf(caller: Caller) {
  return {
    /** Size panels for their frames, with the plan of their edges */
    size: (body: SizePanelsData["body"], options?: CallOptions & { readonly query?: SizePanelsData["query"] }) =>
      caller.send<SizePanelsResponse>(
        { method: "POST", path: "/v1/panels/size", query: options?.query, body },
        options,
      ),
  };
}
