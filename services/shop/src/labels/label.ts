import type { Label } from "@rimwise/drawing";
import { codeOf } from "../printing/code.ts";

/** A label whose code is made when it is drawn: `url` is what it opens, of a record that has a page. */
export type CodedLabel = Omit<Label, "code"> & { readonly url?: string };

/** A label with its code. */
export function labelOf({ url, ...label }: CodedLabel): Label {
  return url === undefined ? label : { ...label, code: codeOf(url) };
}
