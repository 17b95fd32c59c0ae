// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { CallOptions, Caller, Loose } from "../operation.ts";
import type { PanelSizing, PanelsRequest, SizePanelsData } from "./types.gen.ts";

/** Panels for frames: the size to cut, how they fit through the year, their edges. */
export interface PanelsResource {
  /**
   * Size panels for their frames, with the plan of their edges
   *
   * `POST /v1/panels/size`
   */
  size(body: PanelsRequest, options?: CallOptions & { readonly query?: Loose<NonNullable<SizePanelsData["query"]>> | undefined }): Answer<PanelSizing>;
}

export function panelsOf(caller: Caller): PanelsResource {
  return {
    size: (body, options) =>
      caller.send({ method: "POST", path: "/v1/panels/size", query: options?.query, body, isQuestion: true }, options),
  };
}
