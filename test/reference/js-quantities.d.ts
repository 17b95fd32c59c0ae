// The library has no types of its own; this is as much of it as the checks use.
declare module "js-quantities" {
  class Qty {
    constructor(scalar: number, unit: string);
    to(unit: string): Qty;
    readonly scalar: number;
  }
  export = Qty;
}
