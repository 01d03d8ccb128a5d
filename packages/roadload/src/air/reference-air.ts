import { type Density, type Pressure, type Quantity, quantity, type Source, type Temperature } from "@tarewatt/units";

/** Air that a procedure refers its road load to. */
export interface ReferenceAir {
  /** Density of the air. */
  readonly density: Quantity<Density>;
  /** Temperature of the air. */
  readonly temperature: Quantity<Temperature>;
  /** Pressure of the air. */
  readonly pressure: Quantity<Pressure>;
  /** Where the density is from. */
  readonly source: Source;
  /** Where temperature and pressure are from. */
  readonly conditionsSource: Source;
}

const wltpSource: Source = /* @__PURE__ */ Object.freeze({
  document: "UN GTR No. 15",
  section: "annex 4",
  status: "memory",
});

/**
 * Reference air of road-load procedures.
 *
 * - `wltp`: UN GTR No. 15 annex 4, 20 °C and 100 kPa, density as printed there (from memory);
 * - `us`: SAE J2263, 40 CFR 86.129-00 (e): 20 °C and 98.21 kPa seen, density computed for dry air;
 * - `usHeavy`: 40 CFR 1066.310, the density printed there (seen); temperature and pressure are those of `us`, which fit it.
 */
export const referenceAir: Readonly<Record<"wltp" | "us" | "usHeavy", ReferenceAir>> = /* @__PURE__ */ Object.freeze({
  wltp: /* @__PURE__ */ Object.freeze({
    density: /* @__PURE__ */ quantity(1.189, "kg/m³"),
    temperature: /* @__PURE__ */ quantity(20, "°C"),
    pressure: /* @__PURE__ */ quantity(100, "kPa"),
    source: wltpSource,
    conditionsSource: wltpSource,
  }),
  us: /* @__PURE__ */ Object.freeze({
    density: /* @__PURE__ */ quantity(1.167, "kg/m³"),
    temperature: /* @__PURE__ */ quantity(20, "°C"),
    pressure: /* @__PURE__ */ quantity(98.21, "kPa"),
    source: /* @__PURE__ */ Object.freeze({
      document: "computed: dry air as an ideal gas at these conditions, rounded",
      status: "definition",
    }),
    conditionsSource: /* @__PURE__ */ Object.freeze({
      document: "SAE J2263; 40 CFR 86.129-00",
      section: "(e)",
      status: "seen",
    }),
  }),
  usHeavy: /* @__PURE__ */ Object.freeze({
    density: /* @__PURE__ */ quantity(1.17, "kg/m³"),
    temperature: /* @__PURE__ */ quantity(20, "°C"),
    pressure: /* @__PURE__ */ quantity(98.21, "kPa"),
    source: /* @__PURE__ */ Object.freeze({ document: "40 CFR 1066.310", status: "seen" }),
    conditionsSource: /* @__PURE__ */ Object.freeze({
      document: "an assumption: the conditions of other US road-load rules; none were seen beside this density",
      status: "common practice",
    }),
  }),
});
