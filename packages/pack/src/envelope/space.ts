import { InputError, type Length, type NumberRule, type Quantity, quantity, readOptions } from "@tarewatt/units";

/** Sizes of the space under a floor, or of any box that cells go into. */
export interface Space {
  /** Along the vehicle. Greater than zero. */
  readonly length: Quantity<Length>;
  /** Across the vehicle. Greater than zero. */
  readonly width: Quantity<Length>;
  /** From bottom to top. Greater than zero. */
  readonly height: Quantity<Length>;
}

/** What the cells may not use of a space; each is zero when left out, which is the most optimistic case. */
export interface Reserves {
  /** At each of the two sides: sills and what crushes in a side impact. */
  readonly eachSide?: Quantity<Length> | undefined;
  /** At each of the two ends. */
  readonly eachEnd?: Quantity<Length> | undefined;
  /** Below the cells: tray, skid plate, cooling. */
  readonly below?: Quantity<Length> | undefined;
  /** Above the cells: busbars, vents, lid, clearance. */
  readonly above?: Quantity<Length> | undefined;
}

const SIZE = { unit: "mm", above: 0, atMost: 1e6 } as const satisfies NumberRule;
const RESERVE = { unit: "mm", atLeast: 0, atMost: 1e6, optional: true } as const satisfies NumberRule;

/** @internal What is left of a space for cells, in mm. */
export interface Inside {
  readonly length: number;
  readonly width: number;
  readonly height: number;
  /** Where nothing is kept free, in words. */
  readonly unreserved: readonly string[];
}

/** @internal Reads a space and its reserves. */
export function readInside(space: Space, reserves: Reserves = {}): Inside {
  const { length, width, height } = readOptions("space", space, { length: SIZE, width: SIZE, height: SIZE });
  const taken = readOptions("reserves", reserves, {
    eachSide: RESERVE,
    eachEnd: RESERVE,
    below: RESERVE,
    above: RESERVE,
  });
  const { eachSide = 0, eachEnd = 0, below = 0, above = 0 } = taken;
  return {
    length: left("length", length, 2 * eachEnd),
    width: left("width", width, 2 * eachSide),
    height: left("height", height, below + above),
    unreserved: [
      ["at the sides", eachSide] as const,
      ["at the ends", eachEnd] as const,
      ["below", below] as const,
      ["above", above] as const,
    ].flatMap(([where, size]) => (size === 0 ? [where] : [])),
  };
}

function left(name: string, size: number, taken: number): number {
  if (taken < size) return size - taken;
  throw new InputError(
    "INCONSISTENT",
    `the reserves leave nothing of the ${name}: ${quantity(taken, "mm")} of ${quantity(size, "mm")}`,
    { name, size, taken },
  );
}
