import { certifiedRoadLoad, likelyCertificate, referenceAir } from "@tarewatt/roadload";
import { quantity } from "@tarewatt/units";
import type { CertifiedComparator, VehicleOfMaker } from "../../src/index.js";

/** What an invented vehicle is described by, in US units. */
export interface Invented {
  readonly weight: number;
  readonly quadratic: number;
  readonly kilowatts: number;
  readonly modelYear: number;
}

const usual: Invented = { weight: 4500, quadratic: 0.018, kilowatts: 200, modelYear: 2024 };

export function vehicle(given: Partial<Invented> = {}): VehicleOfMaker {
  const { weight, quadratic, kilowatts, modelYear } = { ...usual, ...given };
  const load = certifiedRoadLoad({
    ...{ constant: quantity(35, "lbf"), linear: quantity(0.2, "lbf/mph"), quadratic: quantity(quadratic, "lbf/mph²") },
    conditions: { testMass: quantity(weight, "lb"), airDensity: referenceAir.us.density },
  });
  return { load, ratedPower: quantity(kilowatts, "kW"), yearsOfExperience: modelYear - 2012, modelYear };
}

/** A comparator of the maker that is certified at so many times what is to be expected, and with so much standing power. */
export function comparator(
  name: string,
  given: Partial<Invented> = {},
  { city = 1, highway = 1, watts = 0 }: { city?: number; highway?: number; watts?: number } = {},
): CertifiedComparator {
  const described = vehicle(given);
  const { load, ratedPower, yearsOfExperience } = described;
  const expected = likelyCertificate({ load, ratedPower, yearsOfExperience });
  const certified = (driving: "city" | "highway", factor: number) => {
    const { likely, drive } = expected[driving];
    // The typical drivetrain is charged with 0.89.
    const standing = (watts * drive.duration.in("h")) / drive.distance.in("mi") / 0.89;
    return quantity(factor * likely.in("Wh/mi") + standing, "Wh/mi");
  };
  return {
    ...{ ...described, name, source: "invented" },
    ...{ city: certified("city", city), highway: certified("highway", highway) },
  };
}
