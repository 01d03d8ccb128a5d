import { type ElectricCurrent, type Power, type Quantity, quantity, type Source, type Voltage } from "@tarewatt/units";
import type { ChargingStation } from "./station.js";

/** An alternating supply as a standard or the grid defines it. */
export interface AlternatingSupply {
  /** What it is, in words. */
  readonly name: string;
  /** Phases that carry power. */
  readonly phases: 1 | 3;
  /** Voltage: of a phase against neutral with one phase, between phases with three. */
  readonly voltage: Quantity<Voltage>;
  /** Current of each phase. */
  readonly current: Quantity<ElectricCurrent>;
  /** Power at the wall. */
  readonly power: Quantity<Power>;
  /** Where the voltage and the current are from. */
  readonly source: Source;
}

const saeLevels: Source = /* @__PURE__ */ Object.freeze({
  document: "SAE J1772",
  section: "AC level 1 and 2",
  status: "seen",
});
const europeanGrid: Source = /* @__PURE__ */ Object.freeze({
  document: "currents of IEC 61851-1 at the European grid's 230/400 V",
  status: "common practice",
});

function alternating(name: string, phases: 1 | 3, volts: number, amperes: number, source: Source): AlternatingSupply {
  const watts = volts * amperes * (phases === 3 ? Math.sqrt(3) : 1);
  const [voltage, current, power] = [quantity(volts, "V"), quantity(amperes, "A"), quantity(watts / 1000, "kW")];
  return Object.freeze({ name, phases, voltage, current, power, source });
}

/**
 * Alternating supplies by name: the levels of SAE J1772, and usual sockets and wall boxes on a grid of 230/400 V.
 *
 * Dimensions: V, A, and kW at the wall. The power is computed from voltage and current. Level 2 is allowed from 208 V to
 * 240 V and up to 80 A; here it stands at 240 V and 80 A, its greatest, and at 32 A, a usual one (common practice, no
 * source).
 *
 * @example
 * alternatingSupplies.threePhase16A.power; // 11.1 kW
 */
export const alternatingSupplies: {
  /** SAE J1772 level 1, 120 V, 12 A: 1.4 kW. */
  readonly level1At12A: AlternatingSupply;
  /** SAE J1772 level 1, 120 V, 16 A: 1.9 kW. */
  readonly level1At16A: AlternatingSupply;
  /** SAE J1772 level 2 at 240 V, 32 A: 7.7 kW. */
  readonly level2At32A: AlternatingSupply;
  /** SAE J1772 level 2 at its greatest, 240 V, 80 A: 19.2 kW. */
  readonly level2At80A: AlternatingSupply;
  /** One phase of 230 V, 16 A: 3.7 kW. */
  readonly onePhase16A: AlternatingSupply;
  /** One phase of 230 V, 32 A: 7.4 kW. */
  readonly onePhase32A: AlternatingSupply;
  /** Three phases of 400 V, 16 A: 11 kW. */
  readonly threePhase16A: AlternatingSupply;
  /** Three phases of 400 V, 32 A: 22 kW. */
  readonly threePhase32A: AlternatingSupply;
  /** Three phases of 400 V, 63 A: 44 kW. */
  readonly threePhase63A: AlternatingSupply;
} = /* @__PURE__ */ Object.freeze({
  level1At12A: /* @__PURE__ */ alternating("SAE J1772 level 1, 12 A", 1, 120, 12, saeLevels),
  level1At16A: /* @__PURE__ */ alternating("SAE J1772 level 1, 16 A", 1, 120, 16, saeLevels),
  level2At32A: /* @__PURE__ */ alternating("SAE J1772 level 2, 32 A", 1, 240, 32, saeLevels),
  level2At80A: /* @__PURE__ */ alternating("SAE J1772 level 2, 80 A", 1, 240, 80, saeLevels),
  onePhase16A: /* @__PURE__ */ alternating("one phase, 16 A", 1, 230, 16, europeanGrid),
  onePhase32A: /* @__PURE__ */ alternating("one phase, 32 A", 1, 230, 32, europeanGrid),
  threePhase16A: /* @__PURE__ */ alternating("three phases, 16 A", 3, 400, 16, europeanGrid),
  threePhase32A: /* @__PURE__ */ alternating("three phases, 32 A", 3, 400, 32, europeanGrid),
  threePhase63A: /* @__PURE__ */ alternating("three phases, 63 A", 3, 400, 63, europeanGrid),
});

/** Limits of a direct supply: {@link ChargingStation} with every limit known. */
export interface DirectSupplyLimit extends ChargingStation {
  readonly name: string;
  readonly supply: "direct";
  readonly power: Quantity<Power>;
  readonly current: Quantity<ElectricCurrent>;
  readonly maximumVoltage: Quantity<Voltage>;
  readonly source: Source;
}

function direct(name: string, volts: number, amperes: number, kilowatts: number, source: Source): DirectSupplyLimit {
  const [maximumVoltage, current, power] = [quantity(volts, "V"), quantity(amperes, "A"), quantity(kilowatts, "kW")];
  return Object.freeze({ name, supply: "direct", power, current, maximumVoltage, source });
}

const sae2012: Source = /* @__PURE__ */ Object.freeze({
  document: "SAE J1772 (2012)",
  section: "DC level 1 and 2",
  status: "seen",
});
const sae2017: Source = /* @__PURE__ */ Object.freeze({
  document: "SAE J1772 (2017)",
  section: "DC level 1 and 2",
  status: "memory",
});
const encyclopaedia: Source = /* @__PURE__ */ Object.freeze({
  document: "limits of the combined charging system as an encyclopaedia gives them",
  status: "quoted",
});
const megawatt: Source = /* @__PURE__ */ Object.freeze({
  document:
    "limits of the megawatt charging system as an encyclopaedia and trade reports of its launch in 2022 give them",
  status: "quoted",
});

/**
 * Greatest direct voltage, current and power of public charging standards, by name; each can be given as a station.
 *
 * Dimensions: V, A, and kW at the plug. They are what a connector allows: a station in the street may give less, and its
 * power is seldom the product of its greatest voltage and its greatest current. The limits differ between editions of the
 * standards.
 *
 * @example
 * directSupplyLimits.combined.power; // 500 kW
 */
export const directSupplyLimits: {
  /** SAE J1772 of 2012, DC level 1: up to 450 V, 80 A, 36 kW. */
  readonly level1Of2012: DirectSupplyLimit;
  /** SAE J1772 of 2012, DC level 2: up to 450 V, 200 A, 90 kW. */
  readonly level2Of2012: DirectSupplyLimit;
  /** SAE J1772 of 2017, DC level 1: up to 1000 V, 80 A, 80 kW. From memory. */
  readonly level1Of2017: DirectSupplyLimit;
  /** SAE J1772 of 2017, DC level 2: up to 1000 V, 400 A, 400 kW. From memory. */
  readonly level2Of2017: DirectSupplyLimit;
  /** Combined charging system: up to 1000 V, 500 A, 500 kW; stations of 350 kW and 400 kW are in use. */
  readonly combined: DirectSupplyLimit;
  /** Megawatt charging system for heavy vehicles: up to 1250 V, 3000 A, 3750 kW. */
  readonly megawatt: DirectSupplyLimit;
} = /* @__PURE__ */ Object.freeze({
  level1Of2012: /* @__PURE__ */ direct("SAE J1772 (2012) DC level 1", 450, 80, 36, sae2012),
  level2Of2012: /* @__PURE__ */ direct("SAE J1772 (2012) DC level 2", 450, 200, 90, sae2012),
  level1Of2017: /* @__PURE__ */ direct("SAE J1772 (2017) DC level 1", 1000, 80, 80, sae2017),
  level2Of2017: /* @__PURE__ */ direct("SAE J1772 (2017) DC level 2", 1000, 400, 400, sae2017),
  combined: /* @__PURE__ */ direct("combined charging system", 1000, 500, 500, encyclopaedia),
  megawatt: /* @__PURE__ */ direct("megawatt charging system", 1250, 3000, 3750, megawatt),
});
