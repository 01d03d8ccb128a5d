/**
 * @internal One line of visible text: line breaks and control characters become spaces, and marks that reverse the direction
 * of writing go, so that a name cannot move or hide its neighbours.
 */
export function plainLine(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, " ")
    .replace(/[\u202a-\u202e\u2066-\u2069]/gu, "")
    .replace(/\p{Cs}/gu, "\ufffd")
    .trim();
}
