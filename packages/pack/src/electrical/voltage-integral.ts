/** As many as the table of a battery has, so that between whole steps nothing is lost. */
const STEPS = 1000;

/** @internal Integral of an open-circuit voltage over the state of charge, in V: exact for the table of a battery. */
export function voltageIntegral(openCircuitVoltage: (state: number) => number, from: number, to: number): number {
  if (to < from) return -voltageIntegral(openCircuitVoltage, to, from);
  let sum = 0;
  let left = from;
  for (let step = Math.floor(from * STEPS) + 1; left < to; step++) {
    const right = Math.min(step / STEPS, to);
    sum += ((right - left) * (openCircuitVoltage(left) + openCircuitVoltage(right))) / 2;
    left = right;
  }
  return sum;
}
