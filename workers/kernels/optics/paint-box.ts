import type { Paint, PaintCard, PaintProperties } from '../../../app/model/paint.ts';
import { ladderLoads } from '../../../app/model/paint.ts';
import { cautionOf } from './caution-of.ts';
import { colourOfWashes } from './colour-of-washes.ts';
import optics from './data/pigment-optics.json';
import traits from './data/pigment-properties.json';

/** Names as a painter says them: the table's remarks in brackets stay in the table. */
const nameOf = (name: string): string =>
  name.replace(/\s*\([^)]*\)/g, '').replace(/, chromium$/, '');

// The first word counts: 'O (transparent grades T)' is opaque, 'not listed ...' is unknown.
function transparencyOf(text: string): PaintProperties['transparency'] {
  const word = text.split(' ')[0];
  return word === 'T' || word === 'ST' || word === 'SO' || word === 'O' ? word : null;
}

const lightfastnessOf = (text: string): string | null =>
  /not listed|unsure/.test(text) ? null : text;

const threeSteps = (value: number): 0 | 1 | 2 | null =>
  value === 0 || value === 1 || value === 2 ? value : null;

function propertiesOf(id: string, ci: string): PaintProperties {
  const known =
    traits.pigments.find((pigment) => pigment.optics === id) ??
    traits.pigments.find((pigment) => pigment.ci === ci);
  if (!known) {
    return {
      transparency: null,
      staining: null,
      granulation: null,
      lightfastness: null,
      caution: null,
    };
  }
  return {
    transparency: transparencyOf(known.transparency),
    staining: threeSteps(known.staining),
    granulation: threeSteps(known.granulation),
    lightfastness: lightfastnessOf(known.astmCategory),
    caution: cautionOf(known.hazard),
  };
}

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
    properties: propertiesOf(id, index),
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
  ladder: ladderLoads.map((load) => colourOfWashes([{ paints: [paint], parts: [1], load }])),
});
