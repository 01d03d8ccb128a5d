import { InputError, quantity } from "@tarewatt/units";
import { readWordsIfGiven } from "../check/read-words.js";
import { certifiedFromParts } from "./certified-road-load.js";
import { standardGravity } from "./gravity.js";
import { otherDoubts, physicalRoadLoad } from "./physical-road-load.js";
import { quadraticCoefficient } from "./quadratic-coefficient.js";
import type { AddOnRead } from "./read-add-ons.js";
import type { CertifiedRoadLoad, PhysicalRoadLoad, RoadLoad } from "./road-load.js";
import { inStillAir, inWind } from "./road-load-in-wind.js";
import { TOWING, towingOf } from "./towing.js";

/** What is towed after things were added, and its caution. */
function towingWith(load: RoadLoad, read: readonly AddOnRead[]): Pick<RoadLoad, "towedMass" | "cautions"> {
  const towed = sum(read.filter(({ own }) => own !== undefined).map(({ mass }) => mass));
  if (towed === 0) return towingOf(load);
  return {
    towedMass: quantity((load.towedMass?.in("kg") ?? 0) + towed, "kg"),
    cautions: Object.freeze([...new Set([...(load.cautions ?? []), TOWING])]),
  };
}

/** @internal */
export function onPhysical(load: PhysicalRoadLoad, read: readonly AddOnRead[]): PhysicalRoadLoad {
  const { rollingResistanceCoefficient, rotatingMassFraction, conditions, holds, massBasis } = load;
  const total = load.mass.in("kg") + sum(read.map(({ mass }) => mass));
  const carried = sum(read.map(({ own, mass: each }) => (own ?? rollingResistanceCoefficient) * each));
  return physicalRoadLoad({
    mass: quantity(total, "kg"),
    massBasis: [readWordsIfGiven("massBasis", massBasis) ?? "vehicle", ...read.map(({ name }) => name)].join(" + "),
    dragArea: quantity(load.dragArea.in("m²") + sum(read.map(({ dragArea }) => dragArea)), "m²"),
    // Each mass on its own tyres: the mean by mass gives the same force.
    rollingResistanceCoefficient: (load.mass.in("kg") * rollingResistanceCoefficient + carried) / total,
    ...{ conditions, rotatingMassFraction, holds, doubts: otherDoubts(load) },
    ...towingWith(load, read),
  });
}

/** The wind meets what is added, too: so it is added in still air, and the whole is put in the wind. @internal */
export function onCertifiedInWind(load: CertifiedRoadLoad, read: readonly AddOnRead[]): CertifiedRoadLoad {
  const added = onCertified(inStillAir(load), read);
  return load.headWind === undefined ? added : inWind(added, load.headWind);
}

function onCertified(load: CertifiedRoadLoad, read: readonly AddOnRead[]): CertifiedRoadLoad {
  const { conditions, coefficients, holds, rotatingMassFraction, warnings } = load;
  const airDensity = conditions.airDensity?.in("kg/m³");
  if (airDensity === undefined) {
    throw new InputError(
      "MISSING_OPTION",
      "withAddOns needs a load that says the density of its air: give conditions.airDensity",
      {
        option: "conditions.airDensity",
      },
    );
  }
  const constant = coefficients.constant.in("N");
  const perMass = constant / load.mass.in("kg");
  const mass = sum(read.map((each) => each.mass));
  const dragArea = sum(read.map((each) => each.dragArea));
  const carried = sum(
    read.map(({ own, mass: each }) => (own === undefined ? perMass * each : own * each * standardGravity.value)),
  );
  return certifiedFromParts({
    coefficients: Object.freeze({
      constant: quantity(constant + carried, "N"),
      linear: coefficients.linear,
      quadratic: quantity(
        coefficients.quadratic.in("N/(m/s)²") + quadraticCoefficient.of({ airDensity, dragArea }),
        "N/(m/s)²",
      ),
    }),
    conditions: Object.freeze({ ...conditions, testMass: quantity(load.mass.in("kg") + mass, "kg") }),
    ...{ holds, rotatingMassFraction, warnings },
    ...towingWith(load, read),
  });
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
