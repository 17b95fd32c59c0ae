import type { Bit } from "../bit/bit.ts";
import { bitFaults } from "../bit/faults.ts";
import { type Fault, faultsUnder } from "../quantity/fault.ts";
import { shankFaults } from "../router/collet.ts";
import { routerFaults } from "../router/faults.ts";
import type { Router } from "../router/router.ts";

/** Everything wrong with a bit, a router, and the two together. Pointers start at `/bit` and `/router`. */
export function pairFaults(bit: Bit, router: Router): Fault[] {
  return [
    ...faultsUnder("/bit", bitFaults(bit)),
    ...faultsUnder("/router", routerFaults(router)),
    ...faultsUnder("/bit", shankFaults(bit.shankDiameterMm, router)),
  ];
}
