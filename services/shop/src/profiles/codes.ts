import { NOT_TAKEN_MEANINGS } from "@rimwise/domain";
import { defineCodes } from "../http/code-list.ts";

export const ProfileNotTakenCode = defineCodes({
  name: "ProfileNotTakenCode",
  title: "Why a bit does not make a profile",
  meanings: NOT_TAKEN_MEANINGS,
});
