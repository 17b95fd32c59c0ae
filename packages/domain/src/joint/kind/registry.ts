import type { JointKind } from "../joint-kind.ts";
import { copeAndStick } from "./cope-and-stick.ts";
import type { JointDefinition } from "./define.ts";
import { drawerJoint } from "./drawer-joint.ts";
import { fingerJoint } from "./finger-joint.ts";
import { lockMitre } from "./lock-mitre.ts";
import { panelAndGroove } from "./panel-and-groove.ts";
import { shiplap } from "./shiplap.ts";
import { slidingDovetail } from "./sliding-dovetail.ts";
import { tongueAndGroove } from "./tongue-and-groove.ts";

/** Every joint, one line each. */
const DEFINITIONS: Readonly<Record<JointKind, JointDefinition>> = {
  "cope-and-stick": copeAndStick,
  "tongue-and-groove": tongueAndGroove,
  "lock-mitre": lockMitre,
  "drawer-joint": drawerJoint,
  "finger-joint": fingerJoint,
  "sliding-dovetail": slidingDovetail,
  "panel-and-groove": panelAndGroove,
  shiplap,
};

/** All joints, in the order people read them. */
export const JOINTS: readonly JointDefinition[] = Object.values(DEFINITIONS);

/**
 * What there is to know of a joint.
 * @example
 * jointDefinition("cope-and-stick").halves.map(({ name }) => name) // → ["stick", "cope"]
 */
export function jointDefinition(kind: JointKind): JointDefinition {
  return DEFINITIONS[kind];
}
