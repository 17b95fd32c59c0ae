import { describe, expect, it } from "vitest";
import { ApiError, apiErrorFor, PreconditionFailed, ValidationFailed } from "./errors.ts";

describe("an error the service answered with", () => {
  it.each([
    [400, "ApiError"],
    [401, "Unauthorized"],
    [403, "Forbidden"],
    [404, "NotFound"],
    [409, "Conflict"],
    [412, "PreconditionFailed"],
    [422, "ValidationFailed"],
    [429, "RateLimited"],
    [503, "ApiError"],
  ])("with status %d is a %s, and always an ApiError", (status, name) => {
    const error = apiErrorFor({ status, headers: new Headers(), problem: undefined });
    expect(error).toBeInstanceOf(ApiError);
    expect(error.name).toBe(name);
    expect(error).toMatchObject({ status, code: "unknown", problem: undefined });
  });

  it("names each field in its message and keeps them as data", () => {
    const fault = { in: "body", pointer: "/massG", message: "Too small.", accepted: "a number" } as const;
    const error = apiErrorFor({
      status: 422,
      headers: new Headers(),
      problem: {
        type: "urn:rimwise:problem:not-valid",
        title: "Some of the input cannot be accepted.",
        status: 422,
        detail: "Nothing was changed.",
        instance: "/v1/bits",
        code: "not-valid",
        requestId: "r1",
        errors: [fault],
      },
    });
    expect(error.message).toBe("422 not-valid: Nothing was changed. /massG: Too small.");
    expect(error instanceof ValidationFailed && error.faults).toEqual([fault]);
    expect(error.requestId).toBe("r1");
  });

  it("carries the current ETag when the record has moved on", () => {
    const error = apiErrorFor({ status: 412, headers: new Headers({ etag: '"4"' }), problem: undefined });
    expect(error instanceof PreconditionFailed && error.etag).toBe('"4"');
  });

  it("takes the request id from the head if the body is not the service's", () => {
    const error = apiErrorFor({
      status: 502,
      headers: new Headers({ "x-request-id": "r2" }),
      problem: undefined,
    });
    expect(error.requestId).toBe("r2");
  });
});
