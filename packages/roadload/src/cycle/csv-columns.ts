import { InputError, nearest } from "@tarewatt/units";

/** What a column of a trace can hold. @internal */
export type ColumnKind = "time" | "speed" | "grade" | "altitude";

/** Units of each column, as people write them, and what one is worth in s, m/s, rise over run and m. */
const units = /* @__PURE__ */ (() =>
  ({
    time: { s: 1, sec: 1, seconds: 1, min: 60, h: 3600 },
    speed: { "m/s": 1, mps: 1, "km/h": 1 / 3.6, kmh: 1 / 3.6, kph: 1 / 3.6, mph: 0.44704, "mi/h": 0.44704 },
    grade: { "%": 0.01, percent: 0.01, pct: 0.01, "1": 1, "m/m": 1, fraction: 1 },
    altitude: { m: 1, ft: 0.3048 },
  }) as const satisfies Record<ColumnKind, Readonly<Record<string, number>>>)();

/** How the columns are called in headers; "t", "v" and "h" as symbols. */
const names: Record<ColumnKind, readonly string[]> = {
  time: ["time", "t"],
  speed: ["speed", "velocity", "v"],
  grade: ["grade", "gradient", "slope"],
  altitude: ["altitude", "elevation", "height"],
};

/** A column that was found: where, and what one of its numbers is worth in SI units. @internal */
export interface Column {
  readonly index: number;
  readonly factor: number;
  /** As the header says it. */
  readonly title: string;
}

/** The columns of a trace by their headers, such as `speed (km/h)`, `speed [km/h]` or `speed_kmh`. @internal */
export function findColumns(
  header: readonly string[],
  given: { readonly [K in ColumnKind]?: string | undefined },
): { readonly [K in ColumnKind]?: Column } {
  const read = header.map(parts);
  const found: { [K in ColumnKind]?: Column } = {};
  for (const kind of Object.keys(names) as ColumnKind[]) {
    const matches = read.flatMap(({ name }, index) => (names[kind].includes(name) ? [index] : []));
    if (matches.length > 1) {
      const titles = matches.map((index) => `'${header[index]}'`).join(", ");
      throw new InputError("INCONSISTENT", `${titles} are all columns of ${kind}: keep one of them`, { kind, matches });
    }
    const [index] = matches;
    if (index === undefined) {
      if (given[kind] !== undefined) throw missing(kind, header);
      continue;
    }
    const title = header[index] as string;
    const fromHeader = read[index]?.unit ?? "";
    found[kind] = { index, title, factor: factorOf(kind, title, fromHeader, given[kind]) };
  }
  for (const kind of ["time", "speed"] as const) if (found[kind] === undefined) throw missing(kind, header);
  return found;
}

/** "Speed (km/h)" is speed and km/h; "speed_kmh" and "speed kmh" are too. */
function parts(title: string): { readonly name: string; readonly unit: string } {
  const match = /^\s*([a-z]+)\s*(?:[([]\s*([^)\]]*?)\s*[)\]]|[_\s]\s*(\S+))?\s*$/i.exec(title);
  return { name: match?.[1]?.toLowerCase() ?? title, unit: (match?.[2] ?? match?.[3] ?? "").toLowerCase() };
}

function factorOf(kind: ColumnKind, title: string, fromHeader: string, fromOption: string | undefined): number {
  const known: Readonly<Record<string, number>> = units[kind];
  const [option, header] = [fromOption?.toLowerCase(), fromHeader].map((unit) => {
    if (unit === undefined || unit === "") return undefined;
    if (Object.hasOwn(known, unit)) return known[unit];
    const [near] = nearest(unit, Object.keys(known));
    const hint = near === undefined ? Object.keys(known).join(", ") : `did you mean '${near}'?`;
    throw new InputError("WRONG_CHOICE", `'${unit}' is no unit of ${kind} (column '${title}'): ${hint}`, {
      kind,
      unit,
    });
  });
  if (option !== undefined && header !== undefined && option !== header) {
    throw new InputError(
      "INCONSISTENT",
      `the column '${title}' says ${fromHeader} and the option ${kind}Unit says ${fromOption}: one of them is wrong`,
      { kind },
    );
  }
  const factor = option ?? header;
  if (factor !== undefined) return factor;
  throw new InputError(
    "MISSING_OPTION",
    `nothing says the unit of the column '${title}': write it in the header, such as '${title} (${Object.keys(known)[0]})', or give ${kind}Unit`,
    { option: `${kind}Unit` },
  );
}

function missing(kind: ColumnKind, header: readonly string[]): InputError {
  return new InputError(
    "MISSING_OPTION",
    `there is no column of ${kind}: a header such as '${names[kind][0]} (${Object.keys(units[kind])[0]})' is looked for, ` +
      `got ${header
        .slice(0, 10)
        .map((title) => `'${title.slice(0, 40)}'`)
        .join(", ")}`,
    { kind },
  );
}
