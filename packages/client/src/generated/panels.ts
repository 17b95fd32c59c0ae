// Written by packages/client/generate/main.ts from openapi/openapi.json. Do not edit.

import type { Answer } from "../answer.ts";
import type { AnyOptions, CallOptions, Caller, Loose, Query, StreamOptions } from "../operation.ts";
import type { DrawPanelData, PanelSizing, PanelsRequest, SizePanelsData } from "./types.gen.ts";

/** Panels for frames: the size to cut, how they fit through the year, their edges. */
export interface PanelsResource {
  /**
   * Size panels for their frames, with the plan of their edges
   *
   * `POST /v1/panels/size`
   */
  size(body: PanelsRequest, options?: CallOptions & { readonly query?: Loose<NonNullable<SizePanelsData["query"]>> | undefined }): Answer<PanelSizing>;

  /**
   * A panel's edges in the grooves of its frame, at the driest and the wettest of the year
   *
   * `POST /v1/panels/picture`
   */
  draw(body: PanelsRequest, options: CallOptions & { readonly query?: Loose<NonNullable<DrawPanelData["query"]>> | undefined } & StreamOptions): Answer<ReadableStream<Uint8Array>>;
  /**
   * A panel's edges in the grooves of its frame, at the driest and the wettest of the year
   *
   * `POST /v1/panels/picture`
   */
  draw(body: PanelsRequest, options?: CallOptions & { readonly query?: Loose<NonNullable<DrawPanelData["query"]>> | undefined }): Answer<Blob>;
}

export function panelsOf(caller: Caller): PanelsResource {
  return {
    size: (body, options) =>
      caller.send({ method: "POST", path: "/v1/panels/size", body, isQuestion: true }, options),
    draw: (body: PanelsRequest, options?: AnyOptions & { readonly query?: Query | undefined }) =>
      caller.send<never>({ method: "POST", path: "/v1/panels/picture", body, isQuestion: true, answers: ["image/svg+xml", "image/png"] }, options),
  };
}
