/**
 * How far certificates of one maker are alike beyond what `likelyCertificate` of roadload expects of each: the figures of {@link calibrate}.
 *
 * A maker's vehicles share a factor on all consumption and a standing power, and both change slowly over model years. What was
 * installed adds a standing power of its own, alike in vehicles of like mass, road load and motors. The rest is one result's own.
 *
 * None of them is fitted to a digit. They are round, come together to the deviation that `likelyCertificate` states for a maker unknown
 * (0.087 and 0.052 against 0.090 and 0.052), and are divided where certificates are predicted well from the maker's earlier ones: 106
 * configurations of six makers, median error 3.0 % in the city and 1.8 % on the highway. Half or double of any single one leaves these
 * between 2.8 and 3.7 % and between 1.7 and 2.1 %. Chosen for each maker from the others alone, out of 162 combinations, they are 3.2
 * and 1.9 %, and one in ten is off by 12.2 and 7.2 % in place of 10.7 and 7.0 %: the part of the figures that is owed to the choice.
 */
export const withinMaker = /* @__PURE__ */ Object.freeze({
  /** Standard deviation of the factor that a maker's vehicles share, as a logarithm. */
  factor: 0.04,
  /** Standard deviation of the standing power that a maker's vehicles share, in W at the battery. */
  sharedPower: 150,
  /** Standard deviation of the standing power that goes with what is installed, in W at the battery. */
  installedPower: 250,
  /** Model years after which what is shared has changed so much that its correlation is 1/e. */
  memoryYears: 6,
  /** Difference in mass, and in force at 50 mph, as logarithms, that makes installations unlike: correlation exp(−½). */
  likeBody: 0.15,
  /** The same for rated power. */
  likePower: 0.5,
  /** Standard deviation of one result of its own, as logarithms. Repeat tests of one configuration alone differ by 0.020 and 0.011. */
  own: /* @__PURE__ */ Object.freeze({
    /** On UDDS. */
    city: 0.03,
    /** On HWFET. */
    highway: 0.02,
  }),
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
  agreement: /* @__PURE__ */ Object.freeze({
    /** Below it they are closer than usual. */
    closerBelow: 0.55,
    /** Above it they are farther apart than usual. */
    fartherAbove: 1.4,
  }),
  /** Both results above so many times what was expected look like label figures, which are 1.35 to 1.45 times the unadjusted ones. */
  labelAbove: 1.25,
  /** Where the figures are from. */
  source: /* @__PURE__ */ Object.freeze({
    /** The data that they were chosen on. */
    document:
      "chosen on US government test car lists and label tables, 127 certified configurations of ten makers, model years 2012 to 2024",
    /** How well the data is known. */
    status: "seen",
  }),
} as const);
