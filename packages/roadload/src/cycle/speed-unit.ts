/** Units that a table of speeds can be in. */
export type SpeedUnit = "m/s" | "km/h" | "mph";
