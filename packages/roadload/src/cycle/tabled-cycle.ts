import { converter } from "@tarewatt/units";
import type { Cycle } from "./cycle.js";
import { type CycleDefinition, makeCycle } from "./make-cycle.js";

/** A cycle from a published table: one speed a second from 0 s. @internal */
export function tabledCycle(
  definition: Omit<CycleDefinition, "table" | "unit"> & {
    readonly unit: "mph" | "km/h";
    /** The speeds; a function where they are parts of a table put together, so that nothing is done before it is needed. */
    readonly speeds: readonly number[] | (() => readonly number[]);
  },
): Cycle {
  const { speeds, ...rest } = definition;
  return makeCycle({
    ...rest,
    table: () => {
      const list = typeof speeds === "function" ? speeds() : speeds;
      return {
        time: list.map((_, second) => second),
        speed: list.map(definition.unit === "mph" ? converter("mph", "m/s") : converter("km/h", "m/s")),
      };
    },
  });
}
