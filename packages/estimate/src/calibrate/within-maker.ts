/**
 * How far certificates of one maker are alike beyond what {@link likelyCertificate} expects of each: the figures of {@link calibrate}.
 *
 * A maker's vehicles share a factor on all consumption and a standing power, and both change slowly over model years. What was
 * installed adds a standing power of its own, alike in vehicles of like mass, road load and motors. The rest is one result's own.
 *
 * None of them is fitted to a digit: round figures, so that the deviations together come to what `likelyCertificate` states for a
 * maker unknown, divided where 127 certified configurations of ten makers are predicted well from their makers' earlier ones. The
 * error is flat around them: half or double of any single one moves its median by less than a quarter.
 */
export const withinMaker = /* @__PURE__ */ Object.freeze({
  /** Standard deviation of the factor that a maker's vehicles share, as a logarithm. */
  factor: 0.045,
  /** Standard deviation of the standing power that a maker's vehicles share, in W at the battery. */
  sharedPower: 100,
  /** Standard deviation of the standing power that goes with what is installed, in W at the battery. */
  installedPower: 200,
  /** Model years after which what is shared has changed so much that its correlation is 1/e. */
  memoryYears: 6,
  /** Difference in mass, and in force at 50 mph, as logarithms, that makes installations unlike: correlation exp(−½). */
  likeBody: 0.2,
  /** The same for rated power. */
  likePower: 0.5,
  /** Standard deviation of one result of its own, as logarithms. Repeat tests of one configuration alone differ by 0.020 and 0.011. */
  own: Object.freeze({ city: 0.03, highway: 0.018 }),
  /** Correlation of the two: they are driven with one car. Common practice, no source. */
  ownCorrelation: 0.5,
  /** Degrees of freedom of Student's t for what is one result's own: few, so that an odd one is believed to be odd. */
  degreesOfFreedom: 4,
  /** A comparator is called odd when chance alone would part it from the others as far less often than this. */
  oddBelow: 0.01,
  /**
   * Root mean square distances between which comparators agree as usual, in standard deviations: about the 5th and the 95th
   * percentile for three or four of them, by the chi-squared distribution.
   */
  agreement: Object.freeze({ closerBelow: 0.55, fartherAbove: 1.4 }),
  /** Both results above so many times what was expected look like label figures, which are 1.35 to 1.45 times the unadjusted ones. */
  labelAbove: 1.25,
  source: Object.freeze({
    document:
      "chosen on US government test car lists and label tables, 127 certified configurations of ten makers, model years 2012 to 2024",
    status: "seen",
  }),
} as const);
