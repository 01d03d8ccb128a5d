import type { Cycle } from "./cycle.js";
import { UDDS_SPEEDS } from "./table/udds.js";
import { tabledCycle } from "./tabled-cycle.js";

/** End of the transient part of the UDDS, which is driven again after the soak: 40 CFR 1066.801(c)(1)(i). In s. */
const TRANSIENT_END = 505;

/**
 * Federal Test Procedure (FTP-75): the UDDS, then its first 505 s again; 1874 s, 11.04 mi. The soak of ten minutes between
 * bag 2 and bag 3 is left out: the vehicle is off.
 *
 * @example
 * ftp75.phases.map(({ name }) => name).join(", "); // "cold transient (bag 1), stabilized (bag 2), hot transient (bag 3)"
 */
export const ftp75: Cycle = /* @__PURE__ */ tabledCycle({
  name: "FTP-75",
  source: { document: "40 CFR part 86, appendix I (a); 40 CFR 1066.801(c)(1)", status: "quoted" },
  notes: [
    "The ten minutes of soak between bag 2 and bag 3 are not in the table.",
    "Speeds know no cold start: bag 1 and bag 3 are the same trace.",
  ],
  unit: "mph",
  phases: [
    { name: "cold transient (bag 1)", from: 0, to: 505 },
    { name: "stabilized (bag 2)", from: 505, to: 1369 },
    { name: "hot transient (bag 3)", from: 1369, to: 1874 },
  ],
  speeds: () => [...UDDS_SPEEDS, ...UDDS_SPEEDS.slice(1, TRANSIENT_END + 1)],
});
