/** @internal A label that wants to be centred at a height and takes up room, in pixels. */
export interface Wish {
  readonly centre: number;
  readonly height: number;
}

/**
 * @internal Centres as near to the wished ones as the labels can be without touching. Labels that collide form a block, which
 * stands where its members on average want it; blocks that collide join.
 */
export function spreadApart(wishes: readonly Wish[], gap: number): readonly number[] {
  const order = wishes.map((_, index) => index).sort((a, b) => centreOf(wishes, a) - centreOf(wishes, b) || a - b);
  const blocks: { members: number[]; height: number; centre: number }[] = [];
  for (const index of order) {
    const { centre, height } = wishes[index] as Wish;
    let block = { members: [index], height, centre };
    for (let above = blocks.at(-1); above !== undefined; above = blocks.at(-1)) {
      const free = block.centre - block.height / 2 - (above.centre + above.height / 2);
      if (free >= gap) break;
      blocks.pop();
      const all = above.members.length + block.members.length;
      block = {
        members: [...above.members, ...block.members],
        height: above.height + gap + block.height,
        centre: (above.centre * above.members.length + block.centre * block.members.length) / all,
      };
    }
    blocks.push(block);
  }
  const centres = wishes.map(({ centre }) => centre);
  for (const { members, height, centre } of blocks) {
    let top = centre - height / 2;
    for (const index of members) {
      const own = (wishes[index] as Wish).height;
      centres[index] = top + own / 2;
      top += own + gap;
    }
  }
  return centres;
}

function centreOf(wishes: readonly Wish[], index: number): number {
  return (wishes[index] as Wish).centre;
}

/** @internal The same centres moved as little as it takes to stay between 0 and `room`, where there is room for all. */
export function keepInside(
  wishes: readonly Wish[],
  centres: readonly number[],
  { gap, room }: { readonly gap: number; readonly room: number },
): readonly number[] {
  const kept = [...centres];
  const order = kept.map((_, index) => index).sort((a, b) => (kept[a] as number) - (kept[b] as number));
  const half = (index: number) => (wishes[index] as Wish).height / 2;
  let bottom = room;
  for (const index of [...order].reverse()) {
    kept[index] = Math.min(kept[index] as number, bottom - half(index));
    bottom = (kept[index] as number) - half(index) - gap;
  }
  let top = 0;
  for (const index of order) {
    kept[index] = Math.max(kept[index] as number, top + half(index));
    top = (kept[index] as number) + half(index) + gap;
  }
  return kept;
}
