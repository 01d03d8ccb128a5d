/** @internal A rectangle in pixels. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** @internal A label that wants to stand at a point. */
export interface LabelWish {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** @internal Where a label was put, and whether it is so far from its point that it needs a leader. */
export interface PlacedLabel extends Box {
  readonly far: boolean;
}

const DIRECTIONS = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
] as const;
const RINGS = [1, 2.5, 4, 6, 8, 11, 15, 20] as const;

/**
 * @internal Puts labels beside their points so that none touches another one, a point or a bar: the nearest free place of eight
 * directions, farther out when all are taken. Undefined for a label that has no place.
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  obstacles: readonly Box[],
  { within, gap }: { readonly within: Box; readonly gap: number },
): readonly (PlacedLabel | undefined)[] {
  const taken: Box[] = [...obstacles];
  return wishes.map((wish) => {
    for (const ring of RINGS) {
      for (const direction of DIRECTIONS) {
        const box = boxAt(wish, direction, gap * ring);
        if (!holds(within, box) || taken.some((other) => touch(box, other))) continue;
        taken.push(box);
        return { ...box, far: ring > 1 };
      }
    }
    return undefined;
  });
}

function boxAt({ x, y, width, height }: LabelWish, [right, down]: readonly [number, number], gap: number): Box {
  const centreX = x + right * (gap + width / 2);
  const centreY = y + down * (gap + height / 2);
  return {
    left: centreX - width / 2,
    right: centreX + width / 2,
    top: centreY - height / 2,
    bottom: centreY + height / 2,
  };
}

function holds(outer: Box, { left, right, top, bottom }: Box): boolean {
  return left >= outer.left && right <= outer.right && top >= outer.top && bottom <= outer.bottom;
}

/** @internal */
export function touch(one: Box, other: Box): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}
