import {
  type Density,
  InputError,
  type Mass,
  type Power,
  type Quantity,
  quantity,
  type Temperature,
} from "@tarewatt/units";
import { type ReferenceAir, referenceAir } from "../air/reference-air.js";
import type { RoadLoad } from "../resistance/road-load.js";
import { equivalentTestWeight, isTestWeight, neighbours } from "./equivalent-test-weight.js";

/** What a simulated procedure was driven with. */
export interface ProcedureConditions {
  /** Mass that was driven. */
  readonly testMass: Quantity<Mass>;
  /** Density of the air that the road load refers to; absent when the load does not say it. */
  readonly airDensity?: Quantity<Density>;
  /** Temperature that the road load refers to; absent when the load does not say it. */
  readonly temperature?: Quantity<Temperature>;
  /** Power of the accessories. */
  readonly accessories: Quantity<Power>;
}

/** What a procedure refers its figures to. @internal */
export interface Reference {
  /** Name in messages, with its article. */
  readonly name: string;
  readonly air: ReferenceAir;
  /** Doubts about the mass, from the curb mass in kg where it is known. */
  readonly doubtsOfMass: (mass: number, curbMass: number | undefined) => string[];
}

/** From where on a load is doubted, and refused: common practice, no source. */
const LIMITS = {
  /** Of the density, as a fraction: between the two reference airs of the procedures lie 1.9 %. */
  density: { doubted: 0.01, refused: 0.1 },
  /** In K. */
  temperature: { doubted: 3, refused: 10 },
  /** Of the mass, as a fraction. */
  mass: { doubted: 0.01, refused: 0.1 },
  /** In W: more than this is heating or cooling, which no procedure here has on. */
  accessories: 1000,
} as const;

/** Driver of 75 kg and 25 kg that the world-wide test mass adds to the curb mass. */
const WORLD_LOAD = 100;
/** Most that 28 % of a vehicle load and the optional equipment usually add to that, in kg: common practice, no source. */
const WORLD_MORE = 300;
/** Largest mass that the world-wide procedure is for, in kg: UN R154, scope, from memory. */
const WORLD_MOST = 3500;

/** The procedures that are simulated. @internal */
export type SimulatedProcedure = "us" | "wltp" | "nedc" | "cltc";

/** @internal */
export const references: Readonly<Record<SimulatedProcedure, Reference>> = /* @__PURE__ */ (() => {
  // Air and mass of the procedures that were not read: from memory, the air of the world-wide one.
  const elsewhere: Pick<Reference, "air" | "doubtsOfMass"> = {
    air: referenceAir.wltp,
    doubtsOfMass: (mass, curbMass) => {
      if (curbMass === undefined) return [];
      const expected = curbMass + WORLD_LOAD;
      return massOff(mass, [expected, expected], "curb mass and 100 kg (from memory)");
    },
  };
  return Object.freeze({
    us: {
      name: "the US test",
      air: referenceAir.us,
      doubtsOfMass: (mass, curbMass) => {
        const pounds = quantity(mass, "kg").in("lb");
        if (curbMass !== undefined) {
          const { equivalentTestWeight: weight } = equivalentTestWeight({ curbMass: quantity(curbMass, "kg") });
          return massOff(
            mass,
            [weight.in("kg"), weight.in("kg")],
            `the equivalent test weight of this curb mass, ${weight}`,
          );
        }
        if (isTestWeight(pounds)) return [];
        return [
          `the mass of ${round(pounds)} lb is no equivalent test weight: its neighbours are ${neighbours(pounds)} lb`,
        ];
      },
    },
    wltp: {
      name: "the world-wide procedure",
      air: referenceAir.wltp,
      doubtsOfMass: (mass, curbMass) => [
        ...(mass > WORLD_MOST
          ? [`the mass of ${round(mass)} kg is above the ${WORLD_MOST} kg that the procedure is for (from memory)`]
          : []),
        ...(curbMass === undefined
          ? []
          : massOff(
              mass,
              [curbMass + WORLD_LOAD, curbMass + WORLD_LOAD + WORLD_MORE],
              `curb mass, ${WORLD_LOAD} kg, options and a share of the vehicle load`,
            )),
      ],
    },
    nedc: { name: "the old European procedure", ...elsewhere },
    cltc: { name: "the Chinese cycle", ...elsewhere },
  });
})();

/** What does not fit a procedure; what is far from it is refused. @internal */
export function doubtsOfConditions(
  reference: Reference,
  load: RoadLoad,
  accessories: number,
  curbMass: number | undefined,
): string[] {
  const { name, air } = reference;
  assertStillAir(name, load);
  return [
    ...doubtsOfDensity(name, load.conditions.airDensity?.in("kg/m³"), air.density.in("kg/m³")),
    ...doubtsOfTemperature(name, load.conditions.temperature?.in("°C"), air.temperature.in("°C")),
    ...reference.doubtsOfMass(load.mass.in("kg"), curbMass),
    ...(accessories > LIMITS.accessories
      ? [
          `accessories of ${round(accessories)} W: ${name} is driven without heating or cooling, a few hundred watts are usual`,
        ]
      : []),
  ];
}

/** The conditions of a simulated vehicle. @internal */
export function conditionsOf({ mass, conditions }: RoadLoad, accessories: Quantity<Power>): ProcedureConditions {
  const { airDensity, temperature } = conditions;
  return Object.freeze({
    testMass: mass,
    ...(airDensity === undefined ? {} : { airDensity }),
    ...(temperature === undefined ? {} : { temperature }),
    accessories,
  });
}

function doubtsOfDensity(name: string, density: number | undefined, reference: number): string[] {
  if (density === undefined)
    return [`the load does not say the density of its air; ${name} refers to ${reference} kg/m³`];
  const off = Math.abs(density / reference - 1);
  if (off <= LIMITS.density.doubted) return [];
  const words = `the load refers to air of ${round(density)} kg/m³, ${name} to ${reference} kg/m³`;
  if (off > LIMITS.density.refused) throw elsewhereThan(words);
  return [`${words}: move the load (moveRoadLoad)`];
}

function doubtsOfTemperature(name: string, temperature: number | undefined, reference: number): string[] {
  if (temperature === undefined) return [];
  const off = Math.abs(temperature - reference);
  if (off <= LIMITS.temperature.doubted) return [];
  const words = `the load refers to ${round(temperature)} °C, ${name} to ${reference} °C`;
  if (off > LIMITS.temperature.refused) throw elsewhereThan(words);
  return [`${words}: move the load (moveRoadLoad)`];
}

/** No procedure is driven in wind, or with something in tow. */
function assertStillAir(name: string, load: RoadLoad): void {
  const { towedMass } = load;
  const headWind = load.form === "certified" ? load.headWind : undefined;
  if (headWind !== undefined && headWind.value !== 0) {
    throw elsewhereThan(`the load is one in wind, ${name} is driven in still air`);
  }
  if (towedMass !== undefined && towedMass.value > 0) {
    throw elsewhereThan(`the load tows ${towedMass}, ${name} is driven without`);
  }
}

/** Doubts about a mass that should lie between two; far off it is refused. */
function massOff(mass: number, [low, high]: readonly [number, number], words: string): string[] {
  const off = Math.max(low / mass - 1, mass / high - 1);
  if (off <= LIMITS.mass.doubted) return [];
  const expected = low === high ? `${round(low)} kg` : `${round(low)} to ${round(high)} kg`;
  const told = `the load is one of ${round(mass)} kg, the test mass is ${expected}: ${words}`;
  if (off > LIMITS.mass.refused) throw elsewhereThan(told);
  return [told];
}

function elsewhereThan(words: string): InputError {
  return new InputError(
    "NOT_VALID_HERE",
    `${words}: that gives no figure of the procedure. Move the load (moveRoadLoad), or use driveCycle, which claims no procedure`,
    {},
  );
}

const round = (value: number): number => Number(value.toPrecision(4));
