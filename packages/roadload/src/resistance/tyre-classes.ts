import { describeGiven, InputError, readOptions, type Source } from "@tarewatt/units";

/** Kind of tyre: C1 for passenger cars, C2 for vans, C3 for trucks and buses. */
export type TyreCategory = "C1" | "C2" | "C3";

/** Regulation that a label is of: the letters do not mean the same in both. */
export type TyreLabelRegulation = "EU 2020/740" | "EC 1222/2009";

/** Options of {@link tyreClass}. */
export interface TyreClassOptions {
  /** Letter of rolling resistance ("fuel efficiency") on the label. */
  readonly letter: string;
  /** Kind of tyre. */
  readonly category: TyreCategory;
  /** Regulation of the label: EU 2020/740 since May 2021. */
  readonly regulation: TyreLabelRegulation;
}

/** What a class of the tyre label says. */
export interface TyreClass {
  /** Rolling resistance coefficient at the low end of the class, or where an open class is taken to begin. */
  readonly low: number;
  /** Value that stands for the class. */
  readonly likely: number;
  /** High end of the class, or where an open class is taken to end. */
  readonly high: number;
  /** Which end the label leaves open; left out when neither. */
  readonly open?: "low" | "high";
  /** Where the ends are from. */
  readonly source: Source;
  /** Where the value that stands for the class is from. */
  readonly likelySource: Source;
}

type Ends = readonly [low: number | undefined, high: number | undefined];

const label = (document: string, section: string, status: Source["status"]): Source =>
  Object.freeze({ document, section, status });

/** Ends of the classes in kg/t or N/kN, as printed. */
const classes = {
  "EU 2020/740": {
    source: /* @__PURE__ */ label("Regulation (EU) 2020/740", "classes of rolling resistance", "quoted"),
    C1: { A: [undefined, 6.5], B: [6.6, 7.7], C: [7.8, 9.0], D: [9.1, 10.5], E: [10.6, undefined] },
    // Not seen: better no value than that of the older label.
    C2: {},
    C3: {},
  },
  "EC 1222/2009": {
    source: /* @__PURE__ */ label("Regulation (EC) No 1222/2009", "annex I, part A", "seen"),
    C1: { A: [undefined, 6.5], B: [6.6, 7.7], C: [7.8, 9.0], E: [9.1, 10.5], F: [10.6, 12.0], G: [12.1, undefined] },
    C2: { A: [undefined, 5.5], B: [5.6, 6.7], C: [6.8, 8.0], E: [8.1, 9.2], F: [9.3, 10.5], G: [10.6, undefined] },
    C3: { A: [undefined, 4.0], B: [4.1, 5.0], C: [5.1, 6.0], D: [6.1, 7.0], E: [7.1, 8.0], F: [8.1, undefined] },
  },
} as const satisfies Record<TyreLabelRegulation, { source: Source } & Record<TyreCategory, Record<string, Ends>>>;

/** Values that stand for classes of C1 in UN GTR No. 15, table A4/2, by the high end of the class, in kg/t: from memory. */
const wltpValues = /* @__PURE__ */ (() =>
  [
    { upTo: 6.5, value: 5.9 },
    { upTo: 7.7, value: 7.1 },
    { upTo: 9.0, value: 8.4 },
    { upTo: 10.5, value: 9.8 },
    { upTo: 12.0, value: 11.3 },
    { upTo: Number.POSITIVE_INFINITY, value: 12.9 },
  ] as const)();

const wltpSource = /* @__PURE__ */ label("UN GTR No. 15", "annex 4, table A4/2", "memory");
const middleSource = /* @__PURE__ */ label(
  "the middle of the class; an open class is taken as wide as the last closed one",
  "assumption",
  "common practice",
);

/**
 * Rolling resistance coefficient of a class of the European tyre label, with the class as its spread.
 *
 * For passenger tyres the likely value is the one that WLTP puts for the class (from memory); an open class is taken to end as
 * far from it as it begins. For other tyres it is the middle. The label is of a test at 25 °C and 80 km/h on a drum (ISO 28580):
 * the same
 * tyre resists more in the cold: see {@link tyreTemperatureFactor}.
 *
 * @param options - letter, kind of tyre, regulation
 * @returns low, likely and high coefficient
 * @throws InputError `WRONG_CHOICE` when there is no such class, or it was not seen, and what `readOptions` throws
 * @example
 * const { low, likely, high } = tyreClass({ letter: "B", category: "C1", regulation: "EU 2020/740" });
 * [low, likely, high]; // [0.0066, 0.0071, 0.0077]
 */
export function tyreClass(options: TyreClassOptions): TyreClass {
  readOptions("tyreClass", options, {}, ["letter", "category", "regulation"]);
  const { letter, category, regulation } = options;
  const table = pick("regulation", classes, regulation);
  if (category !== "C1" && category !== "C2" && category !== "C3") {
    throw new InputError("WRONG_CHOICE", `category must be C1, C2 or C3: got ${describeGiven(category)}`, {
      name: "category",
    });
  }
  const ends: Readonly<Record<string, Ends>> = table[category];
  if (Object.keys(ends).length === 0) {
    throw new InputError(
      "WRONG_CHOICE",
      `the classes of ${category} in ${regulation} were not seen: give a coefficient instead`,
      {
        name: "category",
      },
    );
  }
  const [low, high] = pick("letter", ends, letter);
  const widths = Object.values(ends).flatMap(([from, to]) =>
    from === undefined || to === undefined ? [] : [to - from],
  );
  const width = (low === undefined ? widths[0] : widths[widths.length - 1]) ?? 1;
  const middle = ((low ?? (high ?? 0) - width) + (high ?? (low ?? 0) + width)) / 2;
  const likely = category === "C1" ? wltpValue(low, high) : middle;
  return Object.freeze({
    low: perMille(low ?? 2 * likely - (high ?? likely)),
    likely: perMille(likely),
    high: perMille(high ?? 2 * likely - (low ?? likely)),
    ...(low === undefined ? { open: "low" as const } : {}),
    ...(high === undefined ? { open: "high" as const } : {}),
    source: table.source,
    likelySource: category === "C1" ? wltpSource : middleSource,
  });
}

/** The value of the first class that ends above the low end, or that ends with the class. */
function wltpValue(low: number | undefined, high: number | undefined): number {
  const found = wltpValues.find(({ upTo }) => (high === undefined ? upTo > (low ?? 0) : upTo >= high));
  return found?.value ?? wltpValues[wltpValues.length - 1]?.value ?? 0;
}

function perMille(value: number): number {
  return Number((value / 1000).toPrecision(12));
}

function pick<T extends object>(name: string, table: T, given: unknown): T[keyof T] {
  if (typeof given === "string" && Object.hasOwn(table, given)) return table[given as keyof T];
  throw new InputError(
    "WRONG_CHOICE",
    `${name} must be one of ${Object.keys(table).join(", ")}: got ${describeGiven(given)}`,
    {
      name,
      known: Object.keys(table),
    },
  );
}
