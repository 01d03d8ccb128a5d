import fc from "fast-check";

/**
 * Property tests draw the same cases every time, so that a green tree stays green; other cases come with
 * `FAST_CHECK_SEED=random`, or with a number to repeat them.
 */
const wanted = process.env.FAST_CHECK_SEED;
if (wanted !== "random") fc.configureGlobal({ seed: Number(wanted ?? 20_261_124) });
