import { InputError, readNumber } from "@tarewatt/units";
import type { CertifiedComparator } from "./calibration.js";
import { type Compared, type Driving, readVehicle } from "./compared.js";
import type { Learnt } from "./posterior.js";
import { certifiedOverExpected } from "./relations.js";

/** @internal A comparator as it was read. */
export interface ComparatorRead extends Learnt {
  readonly vehicle: Compared;
  readonly name: string;
  readonly source: string;
  /** Certified consumptions, in Wh/mi. */
  readonly certified: Readonly<Record<Driving, number>>;
}

/** @internal Reads and checks the comparators. */
export function readComparators(given: readonly CertifiedComparator[]): readonly ComparatorRead[] {
  if (!Array.isArray(given)) {
    throw new InputError("NOT_AN_OBJECT", "comparators must be a list, such as [{ ... }, { ... }]", {});
  }
  const read = given.map(readComparator);
  refuseRepeated(read.map(({ name }) => name));
  return read;
}

function readComparator(given: CertifiedComparator): ComparatorRead {
  const vehicle = readVehicle("a comparator", given, ["name", "city", "highway", "source?"]);
  const { name, source = "" } = given;
  if (typeof name !== "string" || typeof source !== "string") {
    throw new InputError("WRONG_CHOICE", "name and source of a comparator must be texts", {});
  }
  const consumption = (driving: Driving): number =>
    readNumber(`${driving} of ${name}`, given[driving], { unit: "Wh/mi", above: 0 });
  const certified = { city: consumption("city"), highway: consumption("highway") };
  const moreOn = (driving: Driving): number =>
    certifiedOverExpected.of({
      certified: certified[driving],
      expected: vehicle.expected[driving].likely.in("Wh/mi"),
    });
  return { name, source, vehicle, certified, more: [moreOn("city"), moreOn("highway")] };
}

function refuseRepeated(names: readonly string[]): void {
  const repeated = names.find((name, i) => names.indexOf(name) < i);
  if (repeated === undefined) return;
  throw new InputError("INCONSISTENT", `the comparator '${repeated}' is listed twice: it would count as two vehicles`, {
    name: repeated,
  });
}
