import { describe, expect, it } from "vitest";
import { type Document, type DocumentOperation, operationsOf } from "./document.ts";
import { resourceFiles } from "./resources.ts";

const operation = (operationId: string, more: Partial<DocumentOperation> = {}): DocumentOperation => ({
  operationId,
  tags: ["bits"],
  summary: `Do ${operationId}`,
  responses: { 200: { content: { "application/json": {} } } },
  ...more,
});

const documentWith = (paths: Document["paths"]): Document => ({
  paths,
  components: { schemas: { BitPage: { properties: { data: {}, nextCursor: {} } } } },
});

const page = {
  200: { content: { "application/json": { schema: { $ref: "#/components/schemas/BitPage" } } } },
};

describe("an operation becomes a method", () => {
  const verbOf = (operationId: string, tag: string) =>
    operationsOf(documentWith({ "/v1/x": { get: operation(operationId, { tags: [tag] }) } }))[0]?.verb;

  it.each([
    ["createBit", "bits", "create"],
    ["listBits", "bits", "list"],
    ["previewPlan", "plans", "preview"],
    ["listEvents", "events", "list"],
    ["readVersion", "health", "readVersion"],
    ["listBitEvents", "bits", "listEvents"],
    ["getBitLabel", "bits", "label"],
    ["sendBitToSharpening", "bits", "sendToSharpening"],
    ["setSpeedTrialAside", "speedTrials", "setAside"],
    ["listBitsToReorder", "stock", "listToReorder"],
    ["listSigningKeys", "signing", "listKeys"],
    ["erasePerson", "people", "erase"],
    ["createManyPeople", "people", "createMany"],
    ["getShopPolicy", "policy", "getShop"],
  ])("%s under %s is %s", (operationId, tag, verb) => {
    expect(verbOf(operationId, tag)).toBe(verb);
  });

  it("is refused if two would have one name", () => {
    const paths = { "/v1/bits": { get: operation("readBit") }, "/v1/bit": { get: operation("readBits") } };
    expect(() => operationsOf(documentWith(paths))).toThrow("client.bits.read");
  });

  it.each([[[]], [["bits", "rack"]]])("is refused with the tags %j", (tags) => {
    const paths = { "/v1/bits": { get: operation("listBits", { tags }) } };
    expect(() => operationsOf(documentWith(paths))).toThrow("exactly one tag");
  });
});

describe("the text of a resource", () => {
  const textOf = (paths: Document["paths"]) =>
    resourceFiles(operationsOf(documentWith(paths))).get("bits.ts");

  it("gives what creates its key, what changes its version and what lists its cursor", () => {
    const text = textOf({
      "/v1/bits": {
        get: operation("listBits", { parameters: [{ name: "cursor", in: "query" }], responses: page }),
        post: operation("createBit", {
          parameters: [{ name: "Idempotency-Key", in: "header" }],
          requestBody: { content: { "application/json": {} } },
        }),
      },
      "/v1/bits/{bitId}": {
        patch: operation("updateBit", {
          parameters: [{ name: "If-Match", in: "header" }],
          requestBody: { content: { "application/merge-patch+json": {} } },
        }),
      },
    });
    expect(text).toContain(
      'list(query?: Loose<NonNullable<ListBitsData["query"]>>, options?: CallOptions): Pages<',
    );
    expect(text).toContain('{ path: "/v1/bits", query }, options)');
    expect(text).toContain(
      'create(body: CreateBitData["body"], options?: WriteOptions): Answer<CreateBitResponse>;',
    );
    expect(text).toContain('{ method: "POST", path: "/v1/bits", body }, options)');
    expect(text).toContain(
      'update(bitId: string, body: UpdateBitData["body"], version: RecordVersion | ChangeOptions): Answer<',
    );
    expect(text).toContain('contentType: "application/merge-patch+json"');
    expect(text).toContain("changeOptions(version)");
  });

  it("cannot be broken out of by a description", () => {
    const text = textOf({
      "/v1/bits": { get: operation("readRack", { description: "A */ evil(); /*\nB" }) },
    });
    expect(text).toContain("   * A * / evil(); /* B\n");
  });

  it("follows the events from where the caller stopped", () => {
    const files = resourceFiles(
      operationsOf(
        documentWith({
          "/v1/events": {
            get: operation("listEvents", {
              tags: ["events"],
              parameters: [{ name: "after", in: "query" }],
              responses: page,
            }),
          },
        }),
      ),
    );
    expect(files.get("events.ts")).toContain(', "after")');
    expect(files.get("resources.ts")).toContain("events: eventsOf(caller),");
  });

  it("takes a reason and a key with whatever writes, and what is followed among the options", () => {
    const text = textOf({
      "/v1/bits/{bitId}/retire": {
        post: operation("retireBit", { parameters: [{ name: "Idempotency-Key", in: "header" }] }),
      },
      "/v1/bits/stream": {
        get: operation("followBits", {
          parameters: [
            { name: "after", in: "query" },
            { name: "last-event-id", in: "header" },
          ],
          responses: { 200: { content: { "text/event-stream": {} } } },
        }),
      },
    });
    expect(text).toContain("retire(bitId: string, options?: WriteOptions): Answer<RetireBitResponse>;");
    expect(text).toContain(
      'follow(options?: CallOptions & Loose<NonNullable<FollowBitsData["query"]>>): AsyncIterable<',
    );
    expect(text).toContain("caller.follow(");
    expect(text).toContain("query: { after: options?.after } }");
  });

  it("says what each method does and asks, and takes the types that the document names", () => {
    const text = textOf({
      "/v1/bits/{bitId}": {
        get: operation("getBit", {
          description: "As it is kept.",
          parameters: [{ name: "If-None-Match", in: "header" }],
          responses: {
            200: { content: { "application/json": { schema: { $ref: "#/components/schemas/Bit" } } } },
          },
        }),
      },
    });
    const words =
      "  /**\n   * Do getBit\n   *\n   * As it is kept.\n   *\n   * `GET /v1/bits/{bitId}`\n   */\n";
    expect(text).toContain(
      `${words}  get(bitId: string, options: ConditionalOptions): Answer<Bit | NotModified>;\n${words}  get(bitId: string, options?: CallOptions): Answer<Bit>;`,
    );
  });

  it("gives a label as text, or as it arrives", () => {
    const content = { "image/svg+xml": { schema: {} } };
    const text = textOf({
      "/v1/bits/label": { get: operation("getBitLabel", { responses: { 200: { content } } }) },
    });
    expect(text).toContain(
      "label(options: CallOptions & StreamOptions): Answer<ReadableStream<Uint8Array>>;",
    );
    expect(text).toContain("label(options?: CallOptions): Answer<string>;");
  });

  it("takes a record or a file if the operation does", () => {
    const text = textOf({
      "/v1/bits": {
        post: operation("createBit", {
          requestBody: { content: { "application/json": {}, "image/png": {}, "image/jpeg": {} } },
        }),
      },
    });
    expect(text).toContain(
      'create(body: CreateBitData["body"] | FileBody<"image/png" | "image/jpeg">, options?: CallOptions)',
    );
    expect(text).toContain('path: "/v1/bits", ...bodyOrFile(body), isQuestion: true }');
  });
});
