import type { FadePoint, FadeSpread, FadeTrack } from "./fade-over-years.js";

/** @internal Least and most of the tracks that hold time and cycling, year by year; none where no such track reaches. */
export function spreadOf(tracks: readonly FadeTrack[], years: number): readonly FadeSpread[] {
  const complete = tracks.filter(({ covers }) => covers === "time and cycling");
  const spread = Array.from({ length: years }, (_, i) => i + 1).flatMap((year) => {
    const found = complete.flatMap(({ name, points }) =>
      points.filter((point) => point.year === year).map((point): Named => ({ name, point })),
    );
    found.sort((a, b) => a.point.left - b.point.left);
    const [least, most] = [found[0], found.at(-1)];
    return least === undefined || most === undefined ? [] : [between(year, least, most)];
  });
  return Object.freeze(spread);
}

interface Named {
  readonly name: string;
  readonly point: FadePoint;
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
