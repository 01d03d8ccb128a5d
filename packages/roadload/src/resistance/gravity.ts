import type { Source } from "@tarewatt/units";

const source: Source = { document: "40 CFR 1066.210", section: "(d)", status: "seen" };

/** Standard acceleration of free fall. */
export const standardGravity = {
  /** In m/s². */
  value: 9.80665,
  /** Where the value is from. */
  source,
} as const;
