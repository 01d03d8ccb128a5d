import {
  type Cycle,
  type Drivetrain,
  driveCycle,
  efficiencyDrivetrain,
  type Fraction,
  labelRange,
  type RangeBasis,
  type RangeResult,
  type RoadLoad,
  rangeOn,
  steadySpeed,
} from "@tarewatt/roadload";
import {
  type Energy,
  InputError,
  type Length,
  type Power,
  type Quantity,
  q,
  readNumber,
  readOptions,
  type Speed,
  type Step,
} from "@tarewatt/units";
import { readText } from "../check/reads.js";
import type { Bridge } from "./bridge-result.js";
import { makeBridge, type StepNumbers } from "./make-bridge.js";

/** Options of {@link rangeBridge}. */
export interface RangeBridgeOptions {
  /** All the energy of the pack, as announcements state it. */
  readonly totalEnergy: Quantity<Energy>;
  /** The share of it between full and empty as the driver sees them. */
  readonly usableFraction: Fraction;
  /** The vehicle's resistance. */
  readonly load: RoadLoad;
  /** The steady speed of the back of the envelope. */
  readonly speed: Quantity<Speed>;
  /** Its one efficiency from battery to wheels, with which braking gives everything back. */
  readonly efficiency: Fraction;
  /** The cycle that the estimate is on. */
  readonly cycle: Cycle;
  /** The drivetrain of the estimate. */
  readonly drivetrain: Drivetrain;
  /** Power of lights, controls and pumps; taken in together with the drivetrain's losses. */
  readonly accessories: Quantity<Power>;
  /** Heating and cooling, as `driveCycle` takes it; no part when left out. */
  readonly climate?: Parameters<typeof driveCycle>[0]["climate"];
  /** Label figure per unadjusted one, and the procedure that it is from; no part when left out. */
  readonly label?:
    | {
        /** Label figure per unadjusted one. */
        readonly factor: Fraction;
        /** The procedure that the factor is from, in words. */
        readonly procedure: string;
      }
    | undefined;
  /** The step that the figure is rounded to, such as `q("1 mi")`; no part when left out. */
  readonly rounding?: Quantity<Length> | undefined;
}

/**
 * From the back-of-the-envelope range to the estimated one, one cause at a time, in this order: total to usable energy, steady speed to
 * cycle, one efficiency to losses, climate, label adjustment, rounding.
 *
 * The back of the envelope is all the energy of the pack, at a steady speed on a level road, with one efficiency and nothing else drawn. On the
 * cycle, with the one efficiency, braking still gives everything back through the same efficiency; the losses then are those of the drivetrain, its
 * friction brakes and the accessories.
 *
 * @param options - energies, road load, both ways of driving, both drivetrains, climate, label and rounding
 * @returns the bridge, in kilometres; `inUnit("mi")` and `lines(["km", "mi"])` give both
 * @throws InputError `NOT_A_FRACTION`, `NEGATIVE`, `OUT_OF_RANGE`, `WRONG_CHOICE`, `NOT_VALID_HERE` when a range does not exist or rounds to nothing, and
 *   what `driveCycle`, `steadySpeed` and `rangeOn` throw
 * @example
 * const load = roadLoad({
 *   ...{ mass: q("2700 kg"), dragArea: q("0.84 m²"), rollingResistanceCoefficient: 0.0092, airDensity: q("1.189 kg/m³") },
 * });
 * const contains = ["gears", "motor", "inverter"] as const;
 * const bridge = rangeBridge({
 *   ...{ totalEnergy: q("98 kWh"), usableFraction: 0.93, load, speed: q("80 km/h"), efficiency: 0.92, cycle: wltc3b },
 *   drivetrain: efficiencyDrivetrain({ efficiency: 0.87, regeneration: { share: 0.85 }, contains }),
 *   ...{ accessories: q("400 W"), climate: { power: q("900 W") }, rounding: q("1 km") },
 * });
 * bridge.parts.slice(0, 4).map(({ change }) => Math.round(change.in("km"))); // [-46, -60, -100, -40]
 */
export function rangeBridge(options: RangeBridgeOptions): Bridge<Quantity<Length>> {
  const { totalEnergy: total, usableFraction } = readOptions(
    "rangeBridge",
    options,
    {
      totalEnergy: { unit: "kWh", above: 0 },
      usableFraction: { unit: "1", above: 0, atMost: 1 },
      efficiency: { unit: "1", above: 0, atMost: 1 },
    },
    ["load", "speed", "cycle", "drivetrain", "accessories", "climate?", "label?", "rounding?"],
  );
  const { totalEnergy, load, speed, cycle, drivetrain, accessories, climate, label, rounding } = options;
  const simple = efficiencyDrivetrain({
    ...{ efficiency: options.efficiency, regeneration: { share: 1 }, contains: drivetrain?.contains },
    name: "one efficiency",
  });
  const none = q("0 W");
  const usableEnergy = totalEnergy.times(usableFraction);
  const ways = [
    wayOf(totalEnergy, steadySpeed({ speed, load, drivetrain: simple, accessories: none })),
    wayOf(usableEnergy, steadySpeed({ speed, load, drivetrain: simple, accessories: none })),
    wayOf(usableEnergy, driveCycle({ cycle, load, drivetrain: simple, accessories: none })),
    wayOf(usableEnergy, driveCycle({ cycle, load, drivetrain, accessories })),
    ...(climate === undefined
      ? []
      : [wayOf(usableEnergy, driveCycle({ cycle, load, drivetrain, accessories, climate }))]),
  ];
  const steps = ways.slice(1).map(({ result, working }, i): StepNumbers => {
    const { cause, explanation } = causes[i] as (typeof causes)[number];
    return { cause, explanation, value: result.range.in("km"), working };
  });
  const [envelope, last] = [ways[0], ways.at(-1)] as [Way, Way];
  const adjusted = label === undefined ? undefined : adjustedRange(last.result.range, label);
  if (adjusted !== undefined) steps.push(adjusted.step);
  const unrounded = adjusted?.range ?? last.result.range;
  if (rounding !== undefined) steps.push(rounded(unrounded, rounding));
  return makeBridge({
    unit: "km",
    from: {
      label: `back of the envelope: all ${total} kWh, steady ${speed}, one efficiency of ${options.efficiency}`,
      value: envelope.result.range.in("km"),
    },
    steps,
    to: `range on ${cycle.name}, ${label === undefined ? "no label figure" : `adjusted as ${label.procedure}`}`,
    warnings: last.result.warnings,
  }) as unknown as Bridge<Quantity<Length>>;
}

interface Way {
  readonly result: RangeResult;
  readonly working: () => readonly Step[];
}

function wayOf(usableEnergy: Quantity<Energy>, driven: RangeBasis & { working(): Step[] }): Way {
  const result = rangeOn({ usableEnergy, result: driven });
  return { result, working: () => [...driven.working(), ...result.working()] };
}

const causes = [
  {
    cause: "usable energy instead of total",
    explanation: "Part of the pack's energy is kept back at both ends, and announcements often state all of it.",
  },
  {
    cause: "the cycle instead of a steady speed",
    explanation:
      "A cycle has stops, starts and other speeds: the air takes more at the fast parts, and what braking gives back passes the drivetrain twice.",
  },
  {
    cause: "the drivetrain's losses and the accessories instead of one efficiency",
    explanation:
      "Motors, inverters and gears lose more at low power, friction brakes take their share, and accessories draw power all the time.",
  },
  {
    cause: "climate",
    explanation:
      "Heating and cooling draw power for as long as the drive takes, the more per distance the slower it is.",
  },
] as const;

function adjustedRange(
  range: Quantity<Length>,
  label: NonNullable<RangeBridgeOptions["label"]>,
): { readonly range: Quantity<Length>; readonly step: StepNumbers } {
  readOptions("label of rangeBridge", label, {}, ["factor", "procedure"]);
  const procedure = readText("procedure of label", label.procedure);
  const inputs = { range, factor: label.factor };
  const adjusted = labelRange(inputs);
  return {
    range: adjusted,
    step: {
      cause: "label adjustment",
      explanation: `A label is no test result: ${procedure} multiplies the range by ${label.factor}, for speeds, temperatures and driving that its cycles lack.`,
      value: adjusted.in("km"),
      working: () => [labelRange.explain(inputs)],
    },
  };
}

function rounded(range: Quantity<Length>, rounding: Quantity<Length>): StepNumbers {
  readNumber("rounding", rounding, { unit: "km", above: 0 });
  // Counted in the unit of the step, so that whole miles are whole.
  const steps = Math.round(range.ratioTo(rounding));
  if (steps > 0) {
    return {
      cause: "rounding",
      explanation: `Figures are published to ${rounding}.`,
      value: rounding.times(steps).in("km"),
    };
  }
  throw new InputError("NOT_VALID_HERE", `a range of ${range} rounds to nothing in steps of ${rounding}`, {});
}
