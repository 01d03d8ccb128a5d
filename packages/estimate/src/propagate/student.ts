import { bracketedRoot } from "../solve/bracketed-root.js";
import { normalQuantile } from "./normal.js";

/** From so many degrees of freedom Student's t is taken as normal: they differ by less than one part in ten thousand. */
const MANY = 10_000;

/**
 * @internal The value that |t| of Student's distribution stays below with a given chance, for whole degrees of freedom.
 *
 * By the finite series of M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4 (from memory), in the angle
 * θ = atan(t/√ν), turned round.
 */
export function studentFactor(chance: number, degrees: number): number {
  if (degrees >= MANY) return normalQuantile((1 + chance) / 2);
  const angle = bracketedRoot((theta) => centralShare(theta, degrees) - chance, 0, Math.PI / 2, 1e-14);
  return Math.sqrt(degrees) * Math.tan(angle);
}

function centralShare(theta: number, degrees: number): number {
  const odd = degrees % 2 === 1;
  const [sine, cosine] = [Math.sin(theta), Math.cos(theta)];
  let term = odd ? cosine : 1;
  let sum = degrees === 1 ? 0 : term;
  for (let power = odd ? 3 : 2; power <= degrees - 2; power += 2) {
    term *= (cosine * cosine * (power - 1)) / power;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (theta + sine * sum) : sine * sum;
}
