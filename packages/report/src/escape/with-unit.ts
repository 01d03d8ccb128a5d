/** @internal A printed number with its unit; a pure number has none. */
export function withUnit(printed: string, unit: string): string {
  return unit === "1" ? printed : `${printed} ${unit}`;
}
