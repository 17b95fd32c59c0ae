import type { ErrorObject } from "ajv";
import { acceptedBy, type SchemaWords } from "./accepted.ts";
import type { FieldFault, Place } from "./problem.ts";

/** More than these say nothing new, and a hostile body must not buy a long answer. */
const MOST_FAULTS = 50;

type AjvError = ErrorObject<string, Record<string, unknown>>;

/** The field faults behind the errors of an Ajv run with `allErrors` and `verbose`. */
export function fieldFaults(errors: readonly ErrorObject[], place: Place): FieldFault[] {
  return withoutBranchNoise(errors)
    .slice(0, MOST_FAULTS)
    .map((error) => fieldFault(error, place));
}

/** A union reports every branch that failed. What matters is the union itself, or its only branch that is not null. */
function withoutBranchNoise(errors: readonly ErrorObject[]): ErrorObject[] {
  const unions = errors.filter((error) => error.keyword === "anyOf");
  return errors.filter((error) => {
    const union = unions.find(({ instancePath }) => instancePath === error.instancePath);
    if (union === undefined) return true;
    const isNullable = branchesOf(union).length === 1;
    if (error.keyword === "anyOf") return !isNullable;
    return isNullable && !(error.keyword === "type" && error.params["type"] === "null");
  });
}

function branchesOf(union: ErrorObject): SchemaWords[] {
  const branches: readonly SchemaWords[] = union.parentSchema?.["anyOf"] ?? [];
  return branches.filter(({ type }) => type !== "null");
}

function fieldFault(error: AjvError, place: Place): FieldFault {
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
      const accepted = kindsAccepted(schema);
      return { in: place, pointer, message: "This is not one of the kinds known here.", accepted };
    }
    default:
      return { in: place, pointer: instancePath, message: messageFor(error), accepted: acceptedBy(schema) };
  }
}

function kindsAccepted(schema: SchemaWords): string {
  const { description } = schema;
  return description ?? "one of the kinds in the API description";
}

function messageFor({ keyword, data, message }: AjvError): string {
  if (typeof data === "number" && !Number.isFinite(data)) return "This must be a finite number.";
  switch (keyword) {
    case "type":
      return "This is of the wrong type.";
    case "minimum":
    case "maximum":
      return "This is outside what can be worked with.";
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
