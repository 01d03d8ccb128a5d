import { referenceAir } from "../air/reference-air.js";
import { cltcP } from "../cycle/cltc-p.js";
import type { Cycle } from "../cycle/cycle.js";
import { hwfet } from "../cycle/hwfet.js";
import { nedc } from "../cycle/nedc.js";
import { udds } from "../cycle/udds.js";
import { us06 } from "../cycle/us06.js";
import { wltc3b } from "../cycle/wltc3b.js";
import { wltc3bCity } from "../cycle/wltc3b-city.js";
import { wheelEnergy } from "../energy/wheel-energy.js";
import { standardGravity } from "../resistance/gravity.js";
import { defaultRotatingMassFraction } from "../resistance/rotating-mass.js";
import { combinedWeights } from "./combined.js";
import type { FamilyMember, FamilyProperty } from "./vehicle-family.js";
import { wltpLoadShare } from "./wltp-test-mass.js";

/** Figures that can be translated into each other. */
export type FigureProcedure =
  | "US label"
  | "US unadjusted"
  | "UDDS"
  | "HWFET"
  | "US06"
  | "WLTP"
  | "WLTP city"
  | "NEDC"
  | "CLTC-P";

/** What a procedure says of one vehicle of the family. @internal */
export interface FamilyFigures {
  /** Range per usable energy, in m/J. */
  readonly rangePerEnergy: number;
  /** Consumption at the battery, in J/m. */
  readonly atBattery: number;
}

/** Driver and load that US tests add to the curb mass, in kg: 300 lb, 40 CFR 86.129-94, as quoted. */
const US_LOAD = 136.08;
/** Driver of the mass in running order (75 kg) and 25 kg, which the world-wide test mass adds. */
const WLTP_LOAD = 100;
/** What the old European and the Chinese procedure add to the curb mass, in kg: from memory. */
const OTHER_LOAD = 100;

interface Driving {
  readonly cycle: Cycle;
  readonly deviation: FamilyProperty;
  readonly mass: (member: FamilyMember) => number;
  readonly airDensity: number;
  readonly roadLoad?: FamilyProperty;
}

const us = { mass: ({ curbMass }: FamilyMember) => curbMass + US_LOAD };
const world = {
  mass: ({ curbMass, vehicleLoad }: FamilyMember) => curbMass + WLTP_LOAD + wltpLoadShare.persons * vehicleLoad,
};
const other = { mass: ({ curbMass }: FamilyMember) => curbMass + OTHER_LOAD };

/** Consumption of a vehicle at the battery on one cycle, in J/m. */
function consumption(member: FamilyMember, { cycle, deviation, mass, airDensity, roadLoad }: Driving): number {
  const { dragArea, rollingResistanceCoefficient, efficiency, regenerationShare, accessories } = member;
  const { distance, duration } = cycle.segments.total;
  const kg = mass(member);
  const scale = roadLoad === undefined ? 1 : member[roadLoad];
  const { driving, braking } = wheelEnergy(cycle, {
    constant: scale * rollingResistanceCoefficient * kg * standardGravity.value,
    linear: 0,
    quadratic: scale * 0.5 * airDensity * dragArea,
    inertiaMass: kg * (1 + defaultRotatingMassFraction.value),
  });
  const battery = driving / efficiency + braking * regenerationShare * efficiency + accessories * duration;
  return (battery / distance) * (1 + member[deviation]);
}

/** The figures of a procedure for one vehicle. @internal */
export function familyFigures(procedure: FigureProcedure, member: FamilyMember): FamilyFigures {
  const usAir = referenceAir.us.density.in("kg/m³");
  const worldAir = referenceAir.wltp.density.in("kg/m³");
  const of = (driving: Driving): FamilyFigures => {
    const atBattery = consumption(member, driving);
    return { atBattery, rangePerEnergy: 1 / atBattery };
  };
  const city = { ...us, cycle: udds, deviation: "onUdds", airDensity: usAir } as const;
  const highway = { ...us, cycle: hwfet, deviation: "onHwfet", airDensity: usAir } as const;
  switch (procedure) {
    case "UDDS":
      return of(city);
    case "HWFET":
      return of(highway);
    case "US06":
      return of({ ...us, cycle: us06, deviation: "onUs06", airDensity: usAir });
    case "WLTP":
      return of({ ...world, cycle: wltc3b, deviation: "onWltc", airDensity: worldAir });
    case "WLTP city":
      return of({ ...world, cycle: wltc3bCity, deviation: "onWltcCity", airDensity: worldAir });
    case "NEDC":
      return of({ ...other, cycle: nedc, deviation: "onNedc", airDensity: worldAir, roadLoad: "nedcRoadLoad" });
    case "CLTC-P":
      return of({ ...other, cycle: cltcP, deviation: "onCltcP", airDensity: worldAir });
    default: {
      const [c, h] = [consumption(member, city), consumption(member, highway)];
      const factor = procedure === "US label" ? member.labelAdjustment : 1;
      return {
        atBattery: (combinedWeights.city * c + combinedWeights.highway * h) / factor,
        rangePerEnergy: factor * (combinedWeights.city / c + combinedWeights.highway / h),
      };
    }
  }
}

/** Which deviations, and which properties of one procedure alone, a translation between two procedures varies. @internal */
export function propertiesOf(procedure: FigureProcedure): readonly FamilyProperty[] {
  const own = {
    UDDS: ["onUdds"],
    HWFET: ["onHwfet"],
    US06: ["onUs06"],
    WLTP: ["vehicleLoad", "onWltc"],
    "WLTP city": ["vehicleLoad", "onWltcCity"],
    NEDC: ["nedcRoadLoad", "onNedc"],
    "CLTC-P": ["onCltcP"],
    "US unadjusted": ["onUdds", "onHwfet"],
    "US label": ["labelAdjustment", "onUdds", "onHwfet"],
  } as const satisfies Readonly<Record<FigureProcedure, readonly FamilyProperty[]>>;
  return own[procedure];
}

/** All procedures by name. @internal */
export const figureProcedures: readonly FigureProcedure[] = /* @__PURE__ */ Object.freeze([
  "US label",
  "US unadjusted",
  "UDDS",
  "HWFET",
  "US06",
  "WLTP",
  "WLTP city",
  "NEDC",
  "CLTC-P",
] as const);
