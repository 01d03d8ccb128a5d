import type { AnyQuantity } from "@tarewatt/units";
import type { AnyClaim } from "../../claim/claim.js";
import type { VehicleRecord } from "../../comparator/vehicle-record.js";
import type { Evidence } from "../forms.js";

/** Evidence, claims and comparators as a file keeps them. */
export interface EvidenceFile {
  /** What it is about; empty when that is not said. */
  readonly title: string;
  /** What is known, by the name of the input. */
  readonly evidence: Readonly<Record<string, Evidence<AnyQuantity | number>>>;
  /** Figures as they were announced. */
  readonly claims: readonly AnyClaim[];
  /** Documented vehicles. */
  readonly vehicles: readonly VehicleRecord[];
}
