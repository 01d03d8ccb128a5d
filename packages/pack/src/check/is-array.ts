/** @internal Whether something is an array, without the error that a revoked proxy throws. */
export function isArray(thing: unknown): thing is readonly unknown[] {
  try {
    return Array.isArray(thing);
  } catch {
    return false;
  }
}
