import type { ChangeoverTimes, DaySetup } from "@rimwise/domain";

/** The least minutes of changing over of a day, by trying every order that keeps what must come before: written apart from the domain's search. */
export function leastMinutes(setups: readonly DaySetup[], times: ChangeoverTimes): number {
  const done = new Set<string>();
  const stands = new Map<string, DaySetup>();
  let least = Number.POSITIVE_INFINITY;
  const goOn = (minutes: number, here: string | undefined): void => {
    if (minutes >= least) return;
    if (done.size === setups.length) least = minutes;
    for (const setup of setups) {
      if (done.has(setup.id) || !setup.after.every((id) => done.has(id))) continue;
      const { station } = setup;
      const before = stands.get(station);
      const moved = here === undefined || here === station ? 0 : times.stationMoveMinutes;
      done.add(setup.id);
      stands.set(station, setup);
      goOn(minutes + moved + minutesBetween(before, setup, times), station);
      done.delete(setup.id);
      if (before === undefined) stands.delete(station);
      else stands.set(station, before);
    }
  };
  goOn(0, undefined);
  return least;
}

function minutesBetween(before: DaySetup | undefined, setup: DaySetup, times: ChangeoverTimes): number {
  const isOther = <Key extends keyof DaySetup>(key: Key) =>
    before === undefined || before[key] !== setup[key];
  let minutes = isOther("dial") && setup.dial !== undefined ? times.dialSettingMinutes : 0;
  const bit = isOther("bitId");
  const height = bit || isOther("heightMm");
  const distance = setup.fenceMm !== undefined && (bit || isOther("fenceMm") || isOther("guide"));
  const guide = setup.fenceMm === undefined && setup.guide !== undefined && isOther("guide");
  if (bit) minutes += times.bitChangeMinutes;
  if (height) minutes += times.heightSettingMinutes;
  if (distance || guide) minutes += times.fenceSettingMinutes;
  if (height || distance || guide) minutes += times.testPieceMinutes;
  return minutes;
}
