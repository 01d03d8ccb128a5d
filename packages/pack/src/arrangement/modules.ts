/** A way to divide the cells in series into equal modules. */
export interface EqualModules {
  /** Modules in series. */
  readonly modules: number;
  /** Cells in series in each of them. */
  readonly seriesEach: number;
}

/** @internal All ways to divide so many cells in series into two or more equal modules of two or more in series, few modules first. */
export function equalModules(series: number): readonly EqualModules[] {
  const small: EqualModules[] = [];
  const large: EqualModules[] = [];
  for (let modules = 2; modules * modules <= series; modules++) {
    if (series % modules !== 0) continue;
    const seriesEach = series / modules;
    small.push(Object.freeze({ modules, seriesEach }));
    if (seriesEach !== modules) large.unshift(Object.freeze({ modules: seriesEach, seriesEach: modules }));
  }
  return Object.freeze([...small, ...large]);
}
