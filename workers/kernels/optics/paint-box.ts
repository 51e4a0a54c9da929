import type { Paint, PaintCard } from '../../../app/model/paint.ts';
import { ladderLoads } from '../../../app/model/paint.ts';
import { colourOfWashes } from './colour-of-washes.ts';
import optics from './data/pigment-optics.json';
import { builtInProperties } from './pigment-table.ts';

/** Names as a painter says them: the table's remarks in brackets stay in the table. */
const nameOf = (name: string): string =>
  name
    .replace(/\s*\([^)]*\)/g, '')
    .replace(/, chromium$/, '')
    .replace(/, (\w+ shade)$/, ' $1'); // a comma would part it from the next paint of a list

/**
 * The built-in paints: K and S per unit load, 36 bands, from the published optics table (sources in
 * data/pigment-optics.json), properties from common practice (data/pigment-properties.json).
 */
export const paintBox: readonly Paint[] = optics.pigments.map(({ id, ci, name, K, S }) => {
  const index = ci.replace('?', '');
  return {
    id,
    revision: 1,
    name: nameOf(name),
    ci: [index],
    K,
    S,
    properties: builtInProperties(id, index),
  };
});

/** All that may be chosen from: the built-in paints and her own. */
export const knownPaints = (own: readonly Paint[] = []): readonly Paint[] => [...paintBox, ...own];

/** A paint as the screens show it: its ladder from palest to masstone on the default paper. */
export const paintCard = (paint: Paint): PaintCard => ({
  id: paint.id,
  name: paint.name,
  ci: paint.ci,
  properties: paint.properties,
  ...(paint.optics && { optics: paint.optics }),
  ...(paint.fromMemory && { fromMemory: paint.fromMemory }),
  ladder: ladderLoads.map((load) => colourOfWashes([{ paints: [paint], parts: [1], load }])),
});
