import type { FadePoint, FadeSpread, FadeTrack } from "./fade-over-years.js";

/**
 * @internal Least and most of the tracks that hold time and cycling, year by year; none where no such track reaches. A track that
 * ended still bounds the least: less than it said last cannot become more.
 */
export function spreadOf(tracks: readonly FadeTrack[], years: number): readonly FadeSpread[] {
  const complete = tracks.filter(({ covers }) => covers === "time and cycling");
  const spread = Array.from({ length: years }, (_, i) => i + 1).flatMap((year) => {
    const found = complete.flatMap(({ name, points }) =>
      points.filter((point) => point.year === year).map((point): Named => ({ name, point })),
    );
    found.sort((a, b) => a.point.left - b.point.left);
    const [lowest, most] = [found[0], found.at(-1)];
    if (lowest === undefined || most === undefined) return [];
    const least = complete.reduce((sofar, track) => lowerOf(sofar, lastOf(track, year)), lowest);
    return [between(year, least, most)];
  });
  return Object.freeze(spread);
}

interface Named {
  readonly name: string;
  readonly point: FadePoint;
}

/** The last point of a track that ended before a year. */
function lastOf({ name, points }: FadeTrack, year: number): Named | undefined {
  const point = points.at(-1);
  if (point === undefined || point.year >= year) return undefined;
  const ended = `${name} ends after year ${point.year}: what it said last is held`;
  return { name, point: { ...point, outside: Object.freeze([...point.outside, ended]) } };
}

function lowerOf(a: Named, b: Named | undefined): Named {
  return b !== undefined && b.point.left < a.point.left ? b : a;
}

function between(year: number, least: Named, most: Named): FadeSpread {
  return Object.freeze({
    year,
    left: Object.freeze({ least: least.point.left, most: most.point.left }),
    range: Object.freeze({ least: least.point.range, most: most.point.range }),
    by: Object.freeze({ least: least.name, most: most.name }),
    outside: least.point.outside.length + most.point.outside.length > 0,
  });
}
