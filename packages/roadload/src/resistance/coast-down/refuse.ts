import { InputError } from "@tarewatt/units";

/** Speeds that no coefficients explain. @internal */
export function refuse(why: string): never {
  throw new InputError("NOT_VALID_HERE", `coastDown: ${why}`, {});
}
