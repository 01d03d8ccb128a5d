import { describeGiven, InputError, type Mass, type Quantity, readOptions } from "@tarewatt/units";
import { doubtsOfRules, type Rule, rules } from "./rule.js";

/** Options of {@link usLabelScope}. */
export interface UsLabelScopeOptions {
  /** Gross vehicle weight rating: the largest mass that the maker allows. */
  readonly grossWeight: Quantity<Mass>;
  /** Whether the vehicle is made above all to carry persons (a car, a sport utility vehicle, a passenger van). */
  readonly carriesPersons: boolean;
}

/** Whether a vehicle has a US range label at all. */
export interface UsLabelScope {
  /** Whether it has one. */
  readonly labelled: boolean;
  /** Why, in words. */
  readonly because: string;
  /** The rules behind it. */
  readonly rules: readonly Rule[];
  /** What a reader should doubt. */
  readonly warnings: readonly string[];
}

const lightDuty: Rule = {
  rule: "light-duty vehicles have a gross vehicle weight below 8500 lb",
  source: { document: "US vehicle weight classes, government data centre", status: "seen" },
};
const mediumPassenger: Rule = {
  rule: "vehicles for persons from 8500 to 10 000 lb are labelled since model year 2011",
  source: { document: "40 CFR 86.1803, medium-duty passenger vehicle; 40 CFR 600.002", status: "memory" },
};

/**
 * Whether a vehicle has a US label: heavy pickups and vans have none, so a range that is announced for them is the maker's.
 *
 * @param options - gross weight and purpose
 * @returns the answer with its rule
 * @throws InputError `OUT_OF_RANGE`, `WRONG_CHOICE`, and what `readOptions` throws
 * @example
 * usLabelScope({ grossWeight: q("9,500 lb"), carriesPersons: false }).labelled; // false
 */
export function usLabelScope(options: UsLabelScopeOptions): UsLabelScope {
  const { grossWeight } = readOptions("usLabelScope", options, { grossWeight: { unit: "lb", above: 0 } }, [
    "carriesPersons",
  ]);
  const { carriesPersons } = options;
  if (typeof carriesPersons !== "boolean") {
    throw new InputError("WRONG_CHOICE", `carriesPersons must be true or false: got ${describeGiven(carriesPersons)}`, {
      name: "carriesPersons",
    });
  }
  const light = grossWeight < 8500;
  const labelled = light || (carriesPersons && grossWeight <= 10_000);
  const list = rules(light ? lightDuty : mediumPassenger);
  return Object.freeze({
    labelled,
    because: light
      ? "its gross weight is below 8500 lb"
      : labelled
        ? "its gross weight is 8500 lb or more, but it is made for persons and at most 10 000 lb"
        : "its gross weight is 8500 lb or more, and it is no passenger vehicle of at most 10 000 lb",
    rules: list,
    warnings: Object.freeze(doubtsOfRules(list)),
  });
}
