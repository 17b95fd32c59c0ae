import { defineCodes } from "../http/code-list.ts";
import { MissingCode } from "../qualifications/codes.ts";

/** Why somebody may not run a bit in a router, what they lack among it. */
export const ReasonWhyNotCode = defineCodes({
  name: "ReasonWhyNotCode",
  title: "Why a check is answered with no",
  meanings: {
    "person-unknown": "Nobody of this id uses the shop.",
    "person-left": "The person has left.",
    "no-course": "The person takes part in no course, or not in the approval's.",
    "bit-unknown": "There is no such bit.",
    "bit-retired": "The bit is retired.",
    "bit-held": "The bit is held.",
    "bit-away": "The bit is away at sharpening.",
    "bit-on-loan": "The bit is on loan to somebody else.",
    "router-unknown": "There is no such router.",
    "no-approval": "No approval is issued for this bit in this router in the person's courses.",
    "approval-not-yet": "The approval does not hold yet.",
    "approval-expired": "The approval held until its time was over.",
    "approval-lapsed": "The approval lapsed because something it rests on changed.",
    "approval-withdrawn": "The approval was withdrawn.",
    "other-mark": "The approval is for another mark or speed.",
    "other-wood": "The approval is for other woods.",
    "other-mounting": "The approval is for the router held in another way.",
    "not-for-this-person": "The approval is for other students.",
    "course-over": "The course is over.",
    ...MissingCode.meanings,
    "records-unavailable": "The records could not be read, and no answer is a no.",
    "no-setting": "No setting was issued. Only in checks that older versions kept.",
    "setting-not-yet": "The setting did not hold yet. Only in checks that older versions kept.",
    "setting-expired": "The setting's time was over. Only in checks that older versions kept.",
    "setting-lapsed": "The setting had lapsed. Only in checks that older versions kept.",
    "setting-withdrawn": "The setting was withdrawn. Only in checks that older versions kept.",
  },
});
