/** Twenty expressions of the trade; each can be written many times, with other numbers. The list is fixed, as the costs of it are. */
const typical: readonly ((i: number) => string)[] = [
  (i) => `q("${i + 2000} kg")`,
  (i) => `q("${i + 4000} lb").in("kg")`,
  (i) => `q("15.${i} kWh/100 km").in("Wh/mi")`,
  (i) => `q("24${i} Wh/mi").inverse().in("mi/kWh")`,
  (i) => `q("25${i} Wh/kg").times(q("40${i} kg")).in("kWh")`,
  (i) => `q("9${i} kWh").per(q("50${i} kg")).to("Wh/kg")`,
  (i) => `q("0.2${i}").times(q("2.${i} m²"))`,
  (i) => `q("1.1${i} kg/m³").times(q("0.7${i} m²")).times(q("3${i} m/s")).times(q("3${i} m/s")).times(0.5).to("N")`,
  (i) => `q("45${i} N").times(q("11${i} km/h")).in("kW")`,
  (i) => `q("34.${i} lbf").plus(q("0.2${i} lbf/mph").times(q("6${i} mph")))`,
  (i) => `q("0.02${i} lbf/mph²").in("N/(m/s)²")`,
  (i) => `q("2${i} °C").minus(q("1${i} °F")).in("ΔK")`,
  (i) => `q("6${i} W/K").times(q("Δ1${i} K")).plus(q("35${i} W"))`,
  (i) => `q("3.6${i} V").times(q("14${i} A h")).to("Wh")`,
  (i) => `q("25${i} kW").per(q("35${i} V")).in("A")`,
  (i) => `q("0.8${i} mΩ").times(q("28${i} A")).times(q("28${i} A")).in("W")`,
  (i) => `q("50${i} N·m").times(q("90${i} rpm")).in("hp")`,
  (i) => `quantity(${i}, "MJ/kg").ratioTo(quantity(${i + 1}, "kWh/kg"))`,
  (i) => `q("11${i} MPGe").inverse().in("kWh/100 mi")`,
  (i) => `q("9${i}0 J/(kg·K)").times(q("40${i} kg")).in("kJ/K")`,
];

/** A file of so many typical expressions, all different; without any, what the package itself costs. */
export function typicalFile(count: number): string {
  const expressions = typical.flatMap((write) => Array.from({ length: count / typical.length }, (_, i) => write(i)));
  if (new Set(expressions).size !== count) throw new Error(`${count} is no multiple of ${typical.length}`);
  const lines = expressions.map((expression, i) => `export const x${i} = ${expression};`);
  return `import { q, quantity } from "@tarewatt/units";\nvoid q;\nvoid quantity;\n${lines.join("\n")}\n`;
}
