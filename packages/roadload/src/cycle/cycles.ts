import type { Cycle } from "./cycle.js";
import { hwfet } from "./hwfet.js";
import { udds } from "./udds.js";
import { us06 } from "./us06.js";
import { wltc3b } from "./wltc3b.js";

/**
 * The regulated cycles carried here, by name. Importing this carries all tables; import a single cycle to carry one.
 *
 * @example
 * Object.keys(cycles).join(", "); // "udds, hwfet, us06, wltc3b"
 */
export const cycles: Readonly<Record<"udds" | "hwfet" | "us06" | "wltc3b", Cycle>> = /* @__PURE__ */ Object.freeze({
  udds,
  hwfet,
  us06,
  wltc3b,
});
