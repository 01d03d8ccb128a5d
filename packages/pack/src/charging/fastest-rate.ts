/** @internal C-rate by power, in 1/h, above which no pack on sale takes its charge (common practice, no source). */
export const FASTEST_RATE = 6;
