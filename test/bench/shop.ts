import { type Bit, DEFAULT_POLICY, makePlan, type Router, usualCut, WOODS } from "@rimwise/domain";

const BITS = 1000;
const ROUTERS = 10;
const WOODS_ASKED = 30;

/** Every bit of a large shop in every router in every wood, on one core: seconds, and as a multiple of one JSON pass over the inputs. */
export async function benchShop(): Promise<string> {
  const bits = Array.from({ length: BITS }, (_, index) => bitAt(index));
  const routers = Array.from({ length: ROUTERS }, (_, index) => routerAt(index));
  const woods = WOODS.slice(0, WOODS_ASKED);
  const cuts = bits.map(usualCut);
  const started = process.hrtime.bigint();
  let planned = 0;
  let refused = 0;
  for (const [index, bit] of bits.entries()) {
    const cut = cuts[index];
    if (cut === undefined) continue;
    for (const router of routers) {
      for (const wood of woods) {
        const { verdict } = makePlan({ bit, router, mounting: "table", wood, cut, policy: DEFAULT_POLICY });
        planned += 1;
        if (verdict === "do-not-run") refused += 1;
      }
    }
  }
  const seconds = Number(process.hrtime.bigint() - started) / 1e9;
  const jsonStarted = process.hrtime.bigint();
  for (let index = 0; index < planned; index += 1) JSON.parse(JSON.stringify(bits[index % BITS]));
  const jsonSeconds = Number(process.hrtime.bigint() - jsonStarted) / 1e9;
  return (
    `A whole shop on one core: ${planned} plans (${refused} refused) in ${seconds.toFixed(1)} s, ${((seconds / planned) * 1e6).toFixed(1)} µs each, ` +
    `${(seconds / jsonSeconds).toFixed(1)} × as long as putting each bit through JSON`
  );
}

/** Five forms in turn, in many sizes. */
export function bitAt(index: number): Bit {
  const grow = (index % 97) / 97;
  const rest = { shankDiameterMm: index % 3 === 0 ? 6.35 : 12.7, wings: 2 };
  switch (index % 5) {
    case 0:
      return { form: { kind: "straight", diameterMm: 6 + 30 * grow, cuttingLengthMm: 25 }, ...rest };
    case 1:
      return { form: { kind: "round-over", diameterMm: 12 + 40 * grow, radiusMm: 3 + 15 * grow }, ...rest };
    case 2:
      return { form: { kind: "cove", diameterMm: 14 + 30 * grow, radiusMm: 3 + 10 * grow }, ...rest };
    case 3:
      return {
        form: { kind: "chamfer", diameterMm: 20 + 30 * grow, angleDeg: 45, pilotDiameterMm: 9.5 },
        ...rest,
      };
    default:
      return {
        form: {
          kind: "panel-raising",
          diameterMm: 60 + 30 * grow,
          pilotDiameterMm: 12.7,
          profileHeightMm: 8 + 4 * grow,
          face: "cove",
        },
        shankDiameterMm: 12.7,
        wings: 2,
        massG: 150 + 200 * grow,
      };
  }
}

function routerAt(index: number): Router {
  const minRpm = 8000 + 500 * index;
  return {
    minRpm,
    maxRpm: minRpm + 13000,
    dial: { marks: { first: 1, last: 6 }, steps: index % 3 },
    inputPowerW: 800 + 150 * index,
  };
}
