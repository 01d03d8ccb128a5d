/** @internal What a notebook can draw, by MIME type. */
export type MimeBundle = Readonly<Record<string, unknown>>;

/**
 * @internal Freezes an object and gives it the method that Jupyter kernels for TypeScript ask for. The method is not enumerable:
 * the object stays plain data for comparisons, copies and JSON.
 */
export function displayable<T extends object>(
  thing: T,
  show: (thing: T) => MimeBundle | Promise<MimeBundle>,
): Readonly<T> {
  return Object.freeze(Object.defineProperty(thing, Symbol.for("Jupyter.display"), { value: () => show(thing) }));
}
