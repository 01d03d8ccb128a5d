import { InputError } from "@tarewatt/units";
import type { Sprinter } from "./sprint.js";
import type { ThrustLimit } from "./thrust.js";

/** A run from speed to speed, in SI numbers. @internal */
export interface Run {
  readonly time: number;
  readonly distance: number;
  /** Time at the end of the rollout. */
  readonly rolloutTime: number;
  readonly speed: number;
  /** What held it back, and from which speed on. */
  readonly limits: readonly { readonly by: ThrustLimit | "power after the peak"; readonly from: number }[];
}

/** Step of the integration in s: halving it moves no sprint by more than a ten-thousandth of a second. */
const STEP = 0.005;
/** Longest run, in s. */
const LONGEST = 600;

/** Accelerates with all there is. @internal */
export function runTo({ numbers, thrust, from, to, rollout, peak }: Sprinter): Run {
  const { linear, quadratic, inertiaMass } = numbers;
  const constant = numbers.constant + numbers.gradeForce;
  const forceAt = (v: number, t: number): number =>
    peak !== undefined && t > peak.duration ? Math.min(thrust.force(v), peak.thereafter / v) : thrust.force(v);
  const acceleration = (v: number, t: number): number =>
    (forceAt(v, t) - constant - v * (linear + quadratic * v)) / inertiaMass;
  const limits: { by: ThrustLimit | "power after the peak"; from: number }[] = [];
  let t = 0;
  let v = from;
  let distance = 0;
  let rolloutTime = 0;
  // From rest a power is an infinite force: v = √(2·P·t/m) is taken for the first moment.
  if (v === 0 && thrust.force(0) === Number.POSITIVE_INFINITY) {
    t = 1e-4;
    const power = thrust.force(1);
    v = Math.min(to / 2, Math.sqrt((2 * power * t) / inertiaMass));
    distance = (2 / 3) * v * t;
  }
  for (;;) {
    const beyond = peak !== undefined && t >= peak.duration && peak.thereafter / v < thrust.force(v);
    const by = beyond ? "power after the peak" : thrust.limitAt(v);
    if (limits.at(-1)?.by !== by) limits.push({ by, from: v });
    const a1 = acceleration(v, t);
    if (!(a1 > 0) || t > LONGEST) refuse(v, to);
    // The first steps after rest are short, because a power gives an acceleration that falls steeply there.
    const h = Math.min(STEP, Math.max(1e-5, (0.02 * v) / a1));
    const a2 = acceleration(v + (h / 2) * a1, t + h / 2);
    const a3 = acceleration(v + (h / 2) * a2, t + h / 2);
    const a4 = acceleration(v + h * a3, t + h);
    const gain = (h / 6) * (a1 + 2 * a2 + 2 * a3 + a4);
    if (!(gain > 0)) refuse(v, to);
    // Within a step the speed is taken as linear: at the end of the sprint, and at the end of the rollout.
    const part = Math.min(1, (to - v) / gain);
    const driven = h * (v + (h / 6) * (a1 + a2 + a3));
    if (rollout > distance && rollout <= distance + driven * part) {
      rolloutTime = t + (h * (rollout - distance)) / driven;
    }
    if (part < 1 || v + gain >= to) {
      const end = t + h * part;
      if (distance + driven * part < rollout) {
        throw new InputError("INCONSISTENT", "the speed is reached within the rollout: leave the rollout out", {});
      }
      return { time: end, distance: distance + h * part * (v + (to - v) / 2), rolloutTime, speed: to, limits };
    }
    distance += driven;
    v += gain;
    t += h;
  }
}

function refuse(reached: number, to: number): never {
  const [most, wanted] = [reached, to].map((v) => Number((v * 3.6).toPrecision(4)));
  throw new InputError(
    "NOT_VALID_HERE",
    `the vehicle cannot reach ${wanted} km/h: its force is used up at ${most} km/h`,
    {
      reached,
      to,
    },
  );
}
