/** @internal Freezes plain data through and through. */
export function frozenWhole<T>(data: T): T {
  if (typeof data !== "object" || data === null || Object.isFrozen(data)) return data;
  for (const part of Object.values(data)) frozenWhole(part);
  return Object.freeze(data);
}
