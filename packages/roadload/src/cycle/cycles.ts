import { cltcP } from "./cltc-p.js";
import type { Cycle } from "./cycle.js";
import { ftp75 } from "./ftp75.js";
import { hwfet } from "./hwfet.js";
import { nedc } from "./nedc.js";
import { sc03 } from "./sc03.js";
import { udds } from "./udds.js";
import { us06 } from "./us06.js";
import { wltc3b } from "./wltc3b.js";

/** Names of {@link cycles}. */
export type CycleName = "udds" | "ftp75" | "hwfet" | "us06" | "sc03" | "wltc3b" | "nedc" | "cltcP";

/**
 * The regulated cycles carried here, by name. Importing this carries all tables; import a single cycle to carry one.
 *
 * @example
 * Object.keys(cycles).join(", "); // "udds, ftp75, hwfet, us06, sc03, wltc3b, nedc, cltcP"
 */
export const cycles: Readonly<Record<CycleName, Cycle>> = /* @__PURE__ */ Object.freeze({
  udds,
  ftp75,
  hwfet,
  us06,
  sc03,
  wltc3b,
  nedc,
  cltcP,
});
