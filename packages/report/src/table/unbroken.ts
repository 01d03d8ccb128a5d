/**
 * @internal A printed number or spread with spaces that do not break: a unit on a line of its own is misread. A spread may break
 * before its parentheses.
 */
export function unbroken(printed: string): string {
  return printed.replace(/ (?!\()/g, "\u00a0");
}
