import { type Quantity, readOptions, type Voltage } from "@tarewatt/units";
import type { Caution } from "./caution.js";
import { safetyGuidance } from "./guidance.js";
import { isolationPerVolt, isolationResistance, isolationSource } from "./isolation-resistance.js";
import { voltageCautions } from "./voltage-cautions.js";

/** Options of {@link packCautions}. */
export interface PackCautionsOptions {
  /** Highest voltage of the pack, at full charge. Not negative. Taken for a high one when left out, and the caution says so. */
  readonly maximumVoltage?: Quantity<Voltage> | undefined;
}

/**
 * All cautions that belong to a traction battery, in the order in which a report should print them: voltage, isolation,
 * charging, storage, damage, transport, and that estimates are no basis for design.
 *
 * Those of voltage and isolation only above 60 V of direct current, that of isolation only where the voltage is known; the
 * others at any voltage, because cells burn at any.
 *
 * @param options - the highest voltage of the pack
 * @throws InputError `NEGATIVE`, `WRONG_DIMENSION`, `NOT_A_QUANTITY`, `NOT_AN_OBJECT`, `UNKNOWN_OPTION`
 * @example
 * packCautions({ maximumVoltage: q("403 V") }).map(({ code }) => code).slice(0, 3); // ["HIGH_VOLTAGE", "ISOLATION", "CHARGING"]
 */
export function packCautions(options: PackCautionsOptions): readonly Caution[] {
  readOptions("packCautions", options, { maximumVoltage: { unit: "V", atLeast: 0, optional: true } });
  const { maximumVoltage } = options;
  const highVoltage = voltageCautions({ maximumVoltage });
  const { charging, storage, damage, transport, noBasisForDesign } = safetyGuidance;
  return Object.freeze([
    ...highVoltage,
    ...(highVoltage.length > 0 && maximumVoltage !== undefined ? [isolation(maximumVoltage)] : []),
    ...[charging, storage, damage, transport, noBasisForDesign],
  ]);
}

function isolation(maximumVoltage: Quantity<Voltage>): Caution {
  // Not rounded to a few digits: that could print less than what is asked for.
  const least = (perVolt: number): string => `${isolationResistance({ workingVoltage: maximumVoltage, perVolt })}`;
  const { directBus, joined } = isolationPerVolt;
  return Object.freeze({
    code: "ISOLATION",
    text:
      `Isolation: at ${maximumVoltage.to("V")} of working voltage UN Regulation No. 100 asks for at least ${least(directBus)} ` +
      `between a direct bus and the body, and ${least(joined)} where it is joined to an alternating bus without further ` +
      "protection. Only qualified people may measure it.",
    source: isolationSource,
  });
}
