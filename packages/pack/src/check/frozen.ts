/**
 * @internal Freezes plain data down to its last part: what is exported is shared by everybody in the program.
 */
export function frozen<T>(data: T): T {
  if (typeof data !== "object" || data === null) return data;
  for (const part of Object.values(data)) frozen(part);
  return Object.freeze(data);
}
