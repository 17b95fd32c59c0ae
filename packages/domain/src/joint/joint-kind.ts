/** Every joint, by the trade's names; `kind` says what each is. */
export const JOINT_KINDS = [
  "cope-and-stick",
  "tongue-and-groove",
  "lock-mitre",
  "drawer-joint",
  "finger-joint",
  "sliding-dovetail",
  "panel-and-groove",
  "shiplap",
] as const;

export type JointKind = (typeof JOINT_KINDS)[number];
