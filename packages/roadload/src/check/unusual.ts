/** What is usual of one figure: common practice, no source. */
interface Usual {
  /** The figure, in words. */
  readonly of: string;
  readonly from: number;
  readonly to: number;
  /** With a space before it; empty for a pure number. */
  readonly unit: string;
}

/** Figures of passenger cars and vans. Outside these a slip of unit or of a digit is likelier than such a vehicle. */
const usual = {
  mass: { of: "mass", from: 300, to: 5000, unit: " kg" },
  rollingResistanceCoefficient: { of: "rolling resistance coefficient", from: 0.004, to: 0.02, unit: "" },
  dragCoefficient: { of: "drag coefficient", from: 0.15, to: 0.8, unit: "" },
  dragArea: { of: "drag area", from: 0.3, to: 3, unit: " m²" },
  /** From −40 °C at sea level to 30 °C at 5000 m. */
  airDensity: { of: "air density", from: 0.6, to: 1.6, unit: " kg/m³" },
  efficiency: { of: "drivetrain efficiency", from: 0.5, to: 1, unit: "" },
  usableEnergy: { of: "usable energy", from: 1, to: 250, unit: " kWh" },
  batteryEnergy: { of: "energy of the whole battery, by its state of charge,", from: 1, to: 250, unit: " kWh" },
  accessories: { of: "accessory power", from: 0, to: 3000, unit: " W" },
  chargingEfficiency: { of: "charging efficiency", from: 0.7, to: 1, unit: "" },
  drivenSpeed: { of: "driven speed", from: 0, to: 85, unit: " m/s" },
} as const satisfies Readonly<Record<string, Usual>>;

/**
 * A warning for every figure that is not usual, in SI units but for energies in kWh; a figure that is not known is not judged. Where a figure was not given
 * but follows from others, `how` says so.
 * @internal
 */
export function unusual(figures: { readonly [K in keyof typeof usual]?: number | undefined }, how = ""): string[] {
  return Object.entries(usual).flatMap(([name, { of, from, to, unit }]) => {
    const value = figures[name as keyof typeof usual];
    if (value === undefined || (value >= from && value <= to)) return [];
    const shown = Number(value.toPrecision(4));
    return [
      `the ${of} of ${shown}${unit}${how} lies outside the usual ${from} to ${to}${unit} (common practice, no source): ` +
        `check ${how === "" ? "its unit and its digits" : "their units and their digits"}`,
    ];
  });
}
