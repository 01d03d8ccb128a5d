import type { Solution, VehicleEstimate } from "@tarewatt/estimate";
import type { Answer } from "@tarewatt/report";
import { sprintMeanPower } from "@tarewatt/roadload";
import { type Energy, type Length, type Quantity, q } from "@tarewatt/units";
import { announced } from "./touring-van-evidence.js";

type Needed = Solution<Quantity<Energy>, Quantity<Length>>;

const percent = (share: number): string => `${Math.round(100 * share)} %`;
const both = (range: Quantity<Length>): string => `${range.format()} (${range.format({ unit: "mi" })})`;

/** The answer in two sentences. */
export function lead(estimate: VehicleEstimate, needed: Needed): string {
  const { range } = estimate.on(announced.rangeProcedure);
  const chance = percent(estimate.chanceOf({ range: announced.range, on: announced.rangeProcedure }));
  const pack = needed.needed.p50;
  return (
    `On ${announced.rangeProcedure.name} the van should go ${both(range.p50)}, four times in five between ${range.p10.format()} and ` +
    `${range.p90.format()}. The announced ${both(announced.range)} has a chance of ${chance} with the announced pack` +
    (pack === undefined
      ? "; no pack considered is sure to reach it."
      : `; an even chance takes about ${pack.format()}.`)
  );
}

/** The headline figures. */
export function answers(estimate: VehicleEstimate, needed: Needed): Answer[] {
  const procedure = announced.rangeProcedure;
  const { range, consumption } = estimate.on(procedure);
  return [
    { label: "Range", value: range, detail: `${procedure.name}, full to empty, usable energy at the battery` },
    {
      label: "Chance of the announced range",
      value: percent(estimate.chanceOf({ range: announced.range, on: procedure })),
      detail: `${both(announced.range)} with the pack as announced`,
    },
    {
      label: "Pack for the announced range",
      value: spreadOf(needed) ?? "out of reach",
      detail: "total energy, P50 (P10 to P90); the mass it adds is counted",
    },
    { label: "Mass in running order", value: estimate.mass.runningOrder, detail: "curb mass and a driver of 75 kg" },
    { label: "Range at 110 km/h", value: estimate.on(q("110 km/h")).range, detail: "steady, level road, no heating" },
    {
      label: "Consumption",
      value: consumption.atWall,
      detail: `${procedure.name}, at the wall, charging loss included`,
    },
  ];
}

function spreadOf({ needed: { p10, p50, p90 } }: Needed) {
  return p10 === undefined || p50 === undefined || p90 === undefined ? undefined : { p10, p50, p90 };
}

/** What the announced sprint implies. */
export function sprintText(estimate: VehicleEstimate): string {
  const { to, time } = announced.sprint;
  const mass = estimate.mass.runningOrder.p50;
  const power = sprintMeanPower({ mass, speed: to, time });
  return (
    `The announced ${time} to ${to} takes a mean power of ${power.format({ unit: "kW" })} (${power.format({ unit: "hp" })}) ` +
    `for the motion alone at ${mass.format()} in running order; the peak power of the motors must be well above that.`
  );
}
