import { type Quantity, quantity, readNumber, readOptions, type Speed, type Working } from "@tarewatt/units";
import type { AnyRoadLoadAt, RoadOptions } from "./road-load.js";
import { readGrade } from "./road-load-numbers.js";
import { wheelPower } from "./total-resistance.js";

/** Reads where on the road, and how fast, a load is asked for: in m/s, and rise over run. @internal */
export function readPlace(speed: Quantity<Speed>, options: RoadOptions): { speed: number; grade: number } {
  readOptions("at", options, {}, ["grade?"]);
  return {
    speed: readNumber("speed", speed, { unit: "m/s", atLeast: 0, atMost: 150 }),
    grade: readGrade(options.grade),
  };
}

/**
 * Forces at a speed: the terms of the form, and what both forms share. The same calculation gives the numbers and, when it
 * is asked for, the working.
 * @internal
 */
export function forcesAt<Terms extends object>(
  terms: Terms,
  speed: number,
  compute: (working?: Working) => { readonly slope: number; readonly total: number },
): Readonly<Terms & AnyRoadLoadAt> {
  const { slope, total } = compute();
  return Object.freeze({
    ...terms,
    grade: quantity(slope, "N"),
    total: quantity(total, "N"),
    power: quantity(wheelPower.of({ force: total, speed }), "W"),
    working: () => {
      const working: Working = [];
      wheelPower.of({ force: compute(working).total, speed }, working);
      return working;
    },
  });
}
