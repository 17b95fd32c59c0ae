import type { ErrorObject } from "ajv";
import { acceptedBy, type SchemaWords } from "./accepted.ts";
import { type FieldFault, MOST_FAULTS, type RequestPart } from "./problem.ts";

/** The branch that stands for a kept record. */
const REFERENCE = "RecordReference#";

type AjvError = ErrorObject<string, Record<string, unknown>>;

/** The field faults behind the errors of an Ajv run with `allErrors` and `verbose`. */
export function fieldFaults(errors: readonly ErrorObject[], place: RequestPart): FieldFault[] {
  const faults = withoutBranchNoise(errors).map((error) => fieldFault(error, place));
  // What a field accepts is said whole, so saying it once is enough.
  const first = new Map(faults.toReversed().map((fault) => [fault.pointer, fault]));
  return [...first.values()].toReversed().slice(0, MOST_FAULTS);
}

/**
 * A union reports every branch that failed; only what bears on the branch that was meant is worth saying. Each error is held
 * against the unions on its own way to the root, and no others: a long list of faults costs what it is long.
 */
function withoutBranchNoise(errors: readonly ErrorObject[]): ErrorObject[] {
  const unions = new Map<string, ErrorObject[]>();
  for (const error of errors) {
    if (error.keyword !== "anyOf") continue;
    const here = unions.get(error.instancePath);
    if (here === undefined) unions.set(error.instancePath, [error]);
    else here.push(error);
  }
  if (unions.size === 0) return [...errors];
  return errors.filter((error) =>
    wayUp(error.instancePath).every((path) =>
      (unions.get(path) ?? []).every((union) => isWorthSaying(error, union)),
    ),
  );
}

/** A pointer and every one above it. */
function wayUp(pointer: string): string[] {
  const way = [pointer];
  for (let end = pointer.lastIndexOf("/"); end >= 0; end = pointer.lastIndexOf("/", end - 1)) {
    way.push(pointer.slice(0, end));
    if (end === 0) break;
  }
  return way;
}

function isWorthSaying(error: ErrorObject, union: ErrorObject): boolean {
  const branches: readonly SchemaWords[] = union.parentSchema?.["anyOf"] ?? [];
  if (branches.some(({ $ref }) => $ref === REFERENCE)) return isOfMeantBranch(error, union);
  if (error.instancePath !== union.instancePath) return true;
  const isNullable = branches.filter(({ type }) => type !== "null").length === 1;
  if (error.keyword === "anyOf") return !isNullable;
  return isNullable && !(error.keyword === "type" && error.params["type"] === "null");
}

/** Where a kept record or one described in place may stand, a field `id` says that the kept one is meant. */
function isOfMeantBranch(error: ErrorObject, union: ErrorObject): boolean {
  if (error === union) return typeof union.data !== "object" || union.data === null;
  if (typeof union.data !== "object" || union.data === null) return false;
  const isOfReference =
    error.parentSchema?.["$id"] === REFERENCE.slice(0, -1) ||
    error.instancePath === `${union.instancePath}/id`;
  return "id" in union.data === isOfReference;
}

function fieldFault(error: AjvError, place: RequestPart): FieldFault {
  const { keyword, instancePath, params } = error;
  const schema: SchemaWords = error.parentSchema ?? {};
  switch (keyword) {
    case "required": {
      const name = String(params["missingProperty"]);
      const accepted = acceptedBy(schema.properties?.[name] ?? {});
      return { in: place, pointer: child(instancePath, name), message: "This field is required.", accepted };
    }
    case "additionalProperties": {
      const name = String(params["additionalProperty"]);
      const accepted = `one of: ${Object.keys(schema.properties ?? {}).join(", ")}`;
      return {
        in: place,
        pointer: child(instancePath, name),
        message: "This field is not known here.",
        accepted,
      };
    }
    case "discriminator": {
      const pointer = child(instancePath, String(params["tag"]));
      // The description of a union lists its kinds.
      const accepted = schema.description ?? "a kind from the API description";
      return { in: place, pointer, message: "This is not one of the kinds known here.", accepted };
    }
    default:
      return { in: place, pointer: instancePath, message: messageFor(error), accepted: acceptedBy(schema) };
  }
}

function messageFor({ keyword, data, message }: AjvError): string {
  if (typeof data === "number" && !Number.isFinite(data)) return "This must be a finite number.";
  switch (keyword) {
    case "type":
      return "This is of the wrong type.";
    case "minimum":
    case "maximum":
      return "This is out of range.";
    case "pattern":
    case "format":
      return "This does not have the right format.";
    case "anyOf":
      return "This is not one of the accepted values.";
    case "minProperties":
      return "There is nothing to change in this.";
    default:
      return `This ${message ?? "cannot be accepted"}.`;
  }
}

/** A JSON Pointer one step further in, escaped as RFC 6901 asks. */
function child(pointer: string, name: string): string {
  return `${pointer}/${name.replaceAll("~", "~0").replaceAll("/", "~1")}`;
}
