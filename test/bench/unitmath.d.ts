/** The part of the package that the benchmarks use; it comes without types. */
declare module "unitmath" {
  /** Reads a number with a unit. */
  export default function unit(text: string): { getValue(): number };
}
