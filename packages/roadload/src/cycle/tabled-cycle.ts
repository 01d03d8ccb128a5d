import { converter } from "@tarewatt/units";
import type { Cycle } from "./cycle.js";
import { type CycleDefinition, makeCycle } from "./make-cycle.js";

/** A cycle from a published table: one speed a second from 0 s. @internal */
export function tabledCycle(
  definition: Omit<CycleDefinition, "table" | "unit"> & {
    readonly unit: "mph" | "km/h";
    readonly speeds: readonly number[];
  },
): Cycle {
  const { speeds, ...rest } = definition;
  return makeCycle({
    ...rest,
    table: () => ({
      time: speeds.map((_, second) => second),
      speed: speeds.map(definition.unit === "mph" ? converter("mph", "m/s") : converter("km/h", "m/s")),
    }),
  });
}
