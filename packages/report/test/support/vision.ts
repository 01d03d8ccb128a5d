type Colour = readonly [number, number, number];

/**
 * What dichromats see of a colour: Machado, Oliveira and Fernandes, "A Physiologically-based Model for Simulation of Color Vision
 * Deficiency", IEEE Transactions on Visualization and Computer Graphics 15 (2009), severity 1; matrices on linear RGB, from memory.
 */
const matrices = {
  protanopia: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deuteranopia: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritanopia: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
} as const;

/** A kind of colour vision. */
export type Vision = keyof typeof matrices;

/** The kinds of colour vision that can be simulated. */
export const visions = Object.keys(matrices) as readonly Vision[];

/** A colour "#rrggbb" as linear RGB, as somebody with such a vision sees it. */
export function seenBy(vision: Vision, colour: string): Colour {
  const m = matrices[vision];
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((start) => {
    const value = Number.parseInt(colour.slice(start, start + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  const row = (i: number) => Math.min(1, Math.max(0, (m[i] ?? 0) * r + (m[i + 1] ?? 0) * g + (m[i + 2] ?? 0) * b));
  return [row(0), row(3), row(6)];
}

/** Distance of two colours of linear RGB in CIELAB (CIE 1976, D65; from memory). About 2.3 can just be noticed side by side. */
export function distance(one: Colour, other: Colour): number {
  const [a, b] = [lab(one), lab(other)];
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

function lab([r, g, b]: Colour): Colour {
  const f = (t: number) => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = f((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047);
  const y = f(0.2126729 * r + 0.7151522 * g + 0.072175 * b);
  const z = f((0.0193339 * r + 0.119192 * g + 0.9503041 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}
