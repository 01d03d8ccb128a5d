import { InputError, nearest, type Source } from "@tarewatt/units";

const STATUSES: readonly Source["status"][] = ["seen", "quoted", "memory", "common practice", "definition"];

/** @internal Checks an optional source among the options, so that a working can print it. */
export function readSource(source: unknown): Source | undefined {
  if (source === undefined) return undefined;
  const { document, status } = (typeof source === "object" && source !== null ? source : {}) as Partial<Source>;
  if (typeof document !== "string" || document.trim() === "") {
    throw new InputError(
      "NOT_AN_OBJECT",
      'source must be an object such as { document: "data sheet", status: "seen" }',
      {
        name: "source",
      },
    );
  }
  if (!STATUSES.some((known) => known === status)) {
    const [near] = nearest(String(status), [...STATUSES]);
    const hint = near === undefined ? `one of ${STATUSES.join(", ")}` : `did you mean '${near}'?`;
    throw new InputError("WRONG_CHOICE", `source.status is not '${String(status)}': ${hint}`, { known: STATUSES });
  }
  return source as Source;
}
