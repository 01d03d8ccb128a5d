/**
 * One import for scripts and notebooks: the five packages as namespaces, and the quantity maker that every line begins with.
 *
 * A bundler keeps what is used of a namespace, as long as the namespace is not passed around as a whole.
 *
 * @packageDocumentation
 */

/** What can honestly be said: evidence, spread, inverse, ranking of unknowns, the whole vehicle. */
export * as estimate from "@tarewatt/estimate";
/** How cells become a pack. */
export * as pack from "@tarewatt/pack";
/** The answer where people look: tables, figures, working, pages. */
export * as report from "@tarewatt/report";
/** How a vehicle uses energy. */
export * as roadload from "@tarewatt/roadload";
/** Quantities, and the record of a calculation. */
export * as units from "@tarewatt/units";
export { q } from "@tarewatt/units";
