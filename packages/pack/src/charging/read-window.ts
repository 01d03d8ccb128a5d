import { InputError, type NumberRule } from "@tarewatt/units";

/** @internal A state of charge among the options. */
export const STATE = { unit: "1", atLeast: 0, atMost: 1 } as const satisfies NumberRule;

/** @internal Refuses a charge that does not end above its beginning. */
export function assertWindow(from: number, to: number): void {
  if (to > from) return;
  throw new InputError("INCONSISTENT", `a charge must end above its beginning: got from ${from} to ${to}`, {
    from,
    to,
  });
}
