import type { FamilyWork } from './family-work.ts';
import type { Ground } from './ground.ts';
import { washedOver } from './ground.ts';
import type { PaintChoice } from './paint-choice.ts';
import { sharePuddles } from './share-puddles.ts';

/** Lays a wash, and hands out the same ground again for the same wash on the same ground. */
export function rememberedWash(): typeof washedOver {
  const known = new Map<Ground, Map<unknown, Map<number, Ground>>>();
  return (mix, load, ground) => {
    const mixes = known.get(ground) ?? new Map<unknown, Map<number, Ground>>();
    known.set(ground, mixes);
    const loads = mixes.get(mix) ?? new Map<number, Ground>();
    mixes.set(mix, loads);
    const laid = loads.get(load) ?? washedOver(mix, load, ground);
    loads.set(load, laid);
    return laid;
  };
}

/**
 * What all washes cost, roughly, when every family keeps to its paints and shares wash by wash; given up, with
 * what it costs so far, once it is no better than `enough`.
 */
export function roughCost(
  { works, options, puddles, paper }: PaintChoice,
  masks: readonly number[],
  lay: typeof washedOver,
  enough: number,
): number {
  const grounds: Ground[] = works.map(() => paper);
  const washes = works.reduce((most, work) => Math.max(most, work.washes.length), 0);
  let total = 0;
  for (let wash = 0; wash < washes; wash++) {
    const active = [...works.keys()].filter((f) => works[f]?.washes[wash]);
    const families = active.map((f) => ({
      work: works[f] as FamilyWork,
      mask: masks[f] as number,
      ground: grounds[f] as Ground,
    }));
    const { cost, strokes } = sharePuddles(families, options, wash, puddles, false);
    total += cost;
    if (total >= enough) return total;
    for (const [k, f] of active.entries()) {
      const stroke = strokes[k];
      if (stroke) grounds[f] = lay(stroke.option, stroke.load, grounds[f] as Ground);
    }
  }
  return total;
}
