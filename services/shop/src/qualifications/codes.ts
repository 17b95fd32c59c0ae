import { defineCodes } from "../http/code-list.ts";

/** What a person may lack for a course or a setting. */
export const MissingCode = defineCodes({
  name: "MissingCode",
  title: "What somebody still needs",
  meanings: {
    "safety-test-missing": "A safety test with a high enough score is missing.",
    "demonstration-missing": "A practical demonstration is missing.",
    "parental-consent-missing": "A parent's consent is missing.",
    "instruction-missing": "An instruction that is recent enough is missing.",
    "skill-missing": "A demonstration of the skill that the setting asks for is missing.",
  },
});
