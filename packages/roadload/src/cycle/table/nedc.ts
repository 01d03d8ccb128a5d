/**
 * Ends of the operations of one elementary urban cycle, UN R83, annex 4a, table 1: seconds and km/h, speed linear in between.
 * @internal
 */
// biome-ignore format: as a table
export const NEDC_URBAN: readonly (readonly [seconds: number, speed: number])[] = [
  [0, 0], [11, 0], [15, 15], [23, 15], [25, 10], [28, 0], [49, 0], [54, 15], [56, 15], [61, 32], [85, 32], [93, 10],
  [96, 0], [117, 0], [122, 15], [124, 15], [133, 35], [135, 35], [143, 50], [155, 50], [163, 35], [176, 35], [178, 35],
  [185, 10], [188, 0], [195, 0],
];

/** The same of the extra-urban cycle, UN R83, annex 4a, table 2. @internal */
// biome-ignore format: as a table
export const NEDC_EXTRA_URBAN: readonly (readonly [seconds: number, speed: number])[] = [
  [0, 0], [20, 0], [25, 15], [27, 15], [36, 35], [38, 35], [46, 50], [48, 50], [61, 70], [111, 70], [119, 50], [188, 50],
  [201, 70], [251, 70], [286, 100], [316, 100], [336, 120], [346, 120], [362, 80], [370, 50], [380, 0], [400, 0],
];
