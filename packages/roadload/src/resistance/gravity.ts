import type { Source } from "@tarewatt/units";

const source: Source = /* @__PURE__ */ Object.freeze({ document: "40 CFR 1066.210", section: "(d)", status: "seen" });

/** Standard acceleration of free fall. */
export const standardGravity = /* @__PURE__ */ Object.freeze({
  /** In m/s². */
  value: 9.80665,
  /** Where the value is from. */
  source,
} as const);
