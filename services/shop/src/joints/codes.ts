import { JOINT_FINDING_MEANINGS, TEMPLATE_FINDING_MEANINGS } from "@rimwise/domain";
import { defineCodes } from "../http/code-list.ts";

export const JointFindingCode = defineCodes({
  name: "JointFindingCode",
  title: "What weighs on a joint",
  meanings: JOINT_FINDING_MEANINGS,
});

export const TemplateFindingCode = defineCodes({
  name: "TemplateFindingCode",
  title: "Why a template does not give what is wanted",
  meanings: TEMPLATE_FINDING_MEANINGS,
});

export const JOINT_CODES = [JointFindingCode, TemplateFindingCode];
