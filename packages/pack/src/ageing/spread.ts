import type { FadePoint, FadeSpread, FadeTrack } from "./fade-result.js";

/**
 * @internal Least and most of the tracks that hold time and cycling, year by year; none where no such track reaches. A track that
 * ended still bounds the least: less than it said last cannot become more. A penalty may take from what the least is.
 */
export function spreadOf(
  tracks: readonly FadeTrack[],
  years: number,
  penalised: (track: FadeTrack, point: FadePoint) => FadePoint = (_, point) => point,
): readonly FadeSpread[] {
  const complete = tracks.filter(({ covers }) => covers === "time and cycling");
  const spread = Array.from({ length: years }, (_, i) => i + 1).flatMap((year) => {
    const found = complete.flatMap(({ name, points }) =>
      points.filter((point) => point.year === year).map((point): Named => ({ name, point })),
    );
    const most = [...found].sort((a, b) => a.point.left - b.point.left).at(-1);
    if (most === undefined) return [];
    const least = complete.flatMap((track) => atOrBefore(track, year, penalised)).reduce(lowerOf);
    return [between(year, least, most, resistancesOf(found))];
  });
  return Object.freeze(spread);
}

interface Named {
  readonly name: string;
  readonly point: FadePoint;
}

/** The point of a track in a year, or its last one when it ended before. */
function atOrBefore(
  track: FadeTrack,
  year: number,
  penalised: (track: FadeTrack, point: FadePoint) => FadePoint,
): Named[] {
  const { name, points } = track;
  const point = points.findLast((each) => each.year <= year);
  if (point === undefined) return [];
  if (point.year === year) return [{ name, point: penalised(track, point) }];
  const ended = `${name} ends after year ${point.year}: what it said last is held`;
  return [{ name, point: penalised(track, { ...point, outside: Object.freeze([...point.outside, ended]) }) }];
}

/** Least and most growth of resistance, over those that have one. */
function resistancesOf(found: readonly Named[]): FadeSpread["resistance"] {
  const all = found.flatMap(({ name, point: { resistance } }) =>
    resistance === undefined ? [] : [{ name, resistance }],
  );
  all.sort((a, b) => a.resistance - b.resistance);
  const [least, most] = [all[0], all.at(-1)];
  if (least === undefined || most === undefined) return undefined;
  return Object.freeze({
    ...{ least: least.resistance, most: most.resistance },
    by: Object.freeze({ least: least.name, most: most.name }),
  });
}

function lowerOf(a: Named, b: Named): Named {
  return b.point.left < a.point.left ? b : a;
}

function between(year: number, least: Named, most: Named, resistance: FadeSpread["resistance"]): FadeSpread {
  return Object.freeze({
    year,
    left: Object.freeze({ least: least.point.left, most: most.point.left }),
    range: Object.freeze({ least: least.point.range, most: most.point.range }),
    ...(resistance && { resistance }),
    by: Object.freeze({ least: least.name, most: most.name }),
    outside: least.point.outside.length + most.point.outside.length > 0,
  });
}
