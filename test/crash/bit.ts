/** What is created while the service is killed, stopped or its clock jumps. */
export const BIT = {
  name: "Straight, 12 mm",
  form: { kind: "straight", diameterMm: 12, cuttingLengthMm: 30 },
  shankDiameterMm: 12,
  wings: 2,
};
