import { quantity, type Relation, type RelationInput } from "@tarewatt/units";
import { describe, expect, it } from "vitest";
import * as roadload from "../src/index.js";
import { codeOf } from "./support.js";

type AnyRelation = Relation<Record<string, unknown>, unknown>;

const relations = Object.entries(roadload).filter(
  (entry): entry is [string, AnyRelation & (typeof entry)[1]] =>
    typeof entry[1] === "function" && "expression" in entry[1],
);

/** An allowed value for an input: the middle of its range, or near its one limit. */
function allowed({ atLeast, above, atMost }: RelationInput): number {
  const low = atLeast ?? above;
  if (low !== undefined && atMost !== undefined) return (low + atMost) / 2;
  if (low !== undefined) return low + 1;
  return atMost === undefined ? 1 : atMost - 1;
}

const asGiven = (value: number, unit: string): unknown => (unit === "1" ? value : quantity(value, unit));

describe.each(relations)("%s", (_name, relation) => {
  const inputs = Object.entries(relation.inputs);
  const good = Object.fromEntries(inputs.map(([key, input]) => [key, asGiven(allowed(input), input.unit)]));

  it("takes good inputs and explains them", () => {
    expect(codeOf(() => relation(good))).toBe("nothing thrown");
    const { result, operands } = relation.explain(good);
    expect(Number.isFinite(result.value)).toBe(true);
    expect(operands.map(({ name }) => name)).toEqual(inputs.map(([key]) => key));
  });

  it("refuses a missing input, an unknown one, a bare number, a number that is none, and one out of range", () => {
    for (const [key, input] of inputs) {
      const { [key]: _, ...rest } = good;
      expect(codeOf(() => relation(rest))).toBe("MISSING_OPTION");
      expect(codeOf(() => relation({ ...good, [key]: Number.NaN }))).toBe("NOT_A_NUMBER");
      expect(codeOf(() => relation({ ...good, [key]: quantity(1, "V") }))).toBe("WRONG_DIMENSION");
      if (input.unit !== "1") expect(codeOf(() => relation({ ...good, [key]: 1 }))).toBe("NOT_A_QUANTITY");
      const low = input.atLeast ?? input.above;
      if (low !== undefined) {
        expect(codeOf(() => relation({ ...good, [key]: asGiven(low - 1, input.unit) }))).toMatch(
          /NEGATIVE|OUT_OF_RANGE/,
        );
      }
      if (input.above !== undefined) {
        expect(codeOf(() => relation({ ...good, [key]: asGiven(input.above as number, input.unit) }))).toBe(
          "OUT_OF_RANGE",
        );
      }
      if (input.atMost !== undefined) {
        expect(codeOf(() => relation({ ...good, [key]: asGiven((input.atMost as number) + 1, input.unit) }))).toMatch(
          /NOT_A_FRACTION|OUT_OF_RANGE/,
        );
      }
    }
    expect(codeOf(() => relation({ ...good, nothingLikeIt: 1 }))).toBe("UNKNOWN_OPTION");
  });
});
