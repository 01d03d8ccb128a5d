import { estimateVehicle, type Solution, type VehicleEstimate } from "@tarewatt/estimate";
import { type Figure, lineFigure } from "@tarewatt/report";
import { type Energy, type Length, type Quantity, quantity } from "@tarewatt/units";
import { announced, van } from "./touring-van-evidence.js";

const source = "invented data";

/** Range against steady speed, with its spread. */
export function rangeFigure(): Figure {
  const speeds = Array.from({ length: 17 }, (_, i) => quantity(60 + 5 * i, "km/h"));
  const { conditions } = estimateVehicle({ ...van, conditions: speeds, draws: 4000 });
  const points = conditions.map(({ range }, i) => ({
    x: speeds[i]!.in("km/h"),
    y: range.p50.in("km"),
    low: range.p10.in("km"),
    high: range.p90.in("km"),
  }));
  const at = (speed: number) => points.find(({ x }) => x === speed)!;
  return lineFigure({
    title: "Range at a steady speed",
    x: { title: "Steady speed", unit: "km/h" },
    y: { title: "Range, full to empty", unit: "km" },
    series: [{ name: "touring van", points }],
    targets: [{ value: announced.range.in("km"), label: `announced, ${announced.rangeProcedure.name}` }],
    caption:
      "Level road, still air at 20 °C, no heating or cooling; one mean drivetrain efficiency at all speeds. The announced figure is for a cycle, not for a steady speed.",
    source,
    description:
      `The range falls from about ${Math.round(at(80).y)} km at 80 km/h to ${Math.round(at(120).y)} km at 120 km/h; ` +
      `at 120 km/h it lies between ${Math.round(at(120).low)} and ${Math.round(at(120).high)} km.`,
  });
}

/** Chance of reaching the announced range, against pack energy. */
export function chanceFigure(estimate: VehicleEstimate, needed: Solution<Quantity<Energy>, Quantity<Length>>): Figure {
  const points = Array.from({ length: 71 }, (_, i) => {
    const energy = quantity(80 + i, "kWh"); // inside the bracket that packFor looked at
    return { x: energy.in("kWh"), y: 100 * needed.chanceThatEnough(energy) };
  });
  const likely = estimate.evidence.find(({ input }) => input === "packEnergy")!.likely;
  const even = points.find(({ y }) => y >= 50)!.x;
  return lineFigure({
    title: `Chance of ${announced.range} on ${announced.rangeProcedure.name}`,
    x: { title: "Pack energy, total", unit: "kWh" },
    y: { title: "Chance", unit: "%" },
    series: [{ name: "chance", points }],
    targets: [{ x: likely, label: "announced pack" }],
    caption:
      "Each pack has exactly that energy; the announced one is not known so well, so its chance differs. Every larger pack is also heavier: its mass is counted.",
    source,
    description: `The chance of reaching ${announced.range} rises with pack energy and is even at about ${even} kWh; the announced pack has ${likely} kWh.`,
  });
}
