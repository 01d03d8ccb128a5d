import { InputError, readNumber } from "@tarewatt/units";

const MOST_SPEEDS = 1000;

/** Rising speeds in m/s, two at least. @internal */
export function readSpeeds(given: unknown): number[] {
  if (!Array.isArray(given) || given.length < 2) {
    throw new InputError("EMPTY", "speeds must list two speeds at least", { name: "speeds" });
  }
  if (given.length > MOST_SPEEDS) {
    const message = `speeds must be at most ${MOST_SPEEDS}: got ${given.length}`;
    throw new InputError("TOO_LONG", message, { atMost: MOST_SPEEDS });
  }
  const numbers = given.map((speed, i) => readNumber(`speeds[${i}]`, speed, { unit: "m/s", above: 0, atMost: 150 }));
  for (let i = 1; i < numbers.length; i++) {
    if ((numbers[i] as number) > (numbers[i - 1] as number)) continue;
    throw new InputError("INCONSISTENT", `speeds must rise: got ${given[i]} after ${given[i - 1]}`, { index: i });
  }
  return numbers;
}
