import type { TarewattError } from "@tarewatt/units";

/** Code of the error that a call throws. */
export function codeOf(call: () => unknown): string {
  try {
    call();
  } catch (error) {
    return (error as TarewattError).code;
  }
  return "no error";
}

/** Message of the error that a call throws. */
export function messageOf(call: () => unknown): string {
  try {
    call();
  } catch (error) {
    return (error as TarewattError).message;
  }
  return "no error";
}
