/** The number that a printed one stands for: a true minus, thin spaces between groups, a raised power of ten. */
export function readPrinted(printed: string): number {
  const [mantissa = "", raised] = printed.replaceAll("\u2212", "-").replaceAll("\u202f", "").split("×10");
  if (raised === undefined) return Number(mantissa);
  const exponent = [...raised].map((c) => (c === "⁻" ? "-" : "⁰¹²³⁴⁵⁶⁷⁸⁹".indexOf(c))).join("");
  return Number(`${mantissa}e${exponent}`);
}
