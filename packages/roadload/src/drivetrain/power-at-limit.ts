import type { Drivetrain } from "./drivetrain.js";

const MOST_STEPS = 60;

/**
 * Power at the wheels, between zero and what is asked for, at which the battery gives or takes no more than a limit.
 *
 * Battery power rises with wheel power in every sensible model, so the crossing is found between brackets, by false position
 * with the Illinois rule (Dowell and Jarratt, BIT 11, 1971; from memory). Zero, when the limit is passed without any.
 *
 * @param drivetrain - the model
 * @param asked - power asked for at the wheels, in W
 * @param limit - largest power of the battery while driving, in W, or the smallest (negative) one while braking
 * @param speed - in m/s
 * @internal
 */
export function powerAtLimit(drivetrain: Drivetrain, asked: number, limit: number, speed: number): number {
  const side = asked > 0 ? 1 : -1;
  // Positive where the limit is kept.
  const room = (wheelPower: number): number => side * (limit - drivetrain.batteryPower(wheelPower, speed));
  let outer = asked;
  let roomOuter = room(outer);
  if (roomOuter >= 0) return asked;
  let inner = 0;
  let roomInner = room(inner);
  if (!(roomInner > 0)) return 0;
  const within = 1e-9 * Math.max(1, Math.abs(limit));
  for (let step = 0; step < MOST_STEPS; step++) {
    const next = inner + ((outer - inner) * roomInner) / (roomInner - roomOuter);
    const roomNext = room(next);
    if (Math.abs(roomNext) <= within) return next;
    if (roomNext > 0) {
      inner = next;
      roomInner = roomNext;
      roomOuter /= 2;
    } else {
      outer = next;
      roomOuter = roomNext;
      roomInner /= 2;
    }
  }
  return inner;
}
