import { describe, expect, test } from 'vitest';
import { colourDifference } from '../../../../app/core/colour/ciede2000.ts';
import { drySurface, plainFloor } from '../../../../app/core/colour/surface.ts';
import { colourOfWashes } from '../../../../app/core/paint/colour-of-washes.ts';
import type { FormerBox } from '../../../../app/core/paint/own-box.ts';
import type { Paint } from '../../../../app/core/paint/paint.ts';
import { pigmentTable } from '../../../../app/core/paint/paint-box.ts';
import { nothingKnown, traitsOfNames } from '../../../../app/core/paint/paint-traits.ts';
import { renewBox, tubeOf, underDrySurface } from '../../../../app/core/paint/renew-paints.ts';
import { builtIn } from '../../../support/paint/cards.ts';

const loads = [0.5, 1, 2, 4, 8];
const plain = ({ id, name, ci, K, S, properties }: Paint): Paint => ({
  id,
  revision: 1,
  name,
  ci,
  K,
  S,
  properties,
});

/** How far its washes on white paper look from before, CIEDE2000. */
async function shiftOf(paint: Paint): Promise<number[]> {
  const renewed = { ...plain(paint), ...(await underDrySurface(paint)) };
  return loads.map((load) => {
    const wash = (each: Paint) => [{ paints: [each], parts: [1], load }];
    return colourDifference(
      colourOfWashes(wash(plain(paint)), plainFloor),
      colourOfWashes(wash(renewed), drySurface),
    );
  });
}

describe('optics fitted under a plain floor', () => {
  test('look the same where paint scatters a good deal', async () => {
    for (const id of ['pw4-zinc-white', 'py43-yellow-ochre', 'pbr24-titanate-buff'])
      expect(Math.max(...(await shiftOf(builtIn(id)))), id).toBeLessThan(1);
  });

  // Under an inner reflection no paint without scattering darkens so evenly: the best there is, of ten paints of all kinds.
  test('look nearly the same where it scatters next to nothing', async () => {
    const shifts = await Promise.all(
      [
        'pb27-prussian-blue',
        'pr122-quinacridone-magenta',
        'pr5-naphthol-red',
        'pb29-ultramarine-blue',
        'pb60-indanthrone-blue',
        'pg7-phthalocyanine-green',
        'pbr7-burnt-sienna',
        'py150-nickel-azo',
        'pv23-dioxazine-violet',
        'pbk9-bone-black',
      ].map((id) => shiftOf(builtIn(id))),
    );
    const all = shifts.flat();
    expect(all.reduce((sum, each) => sum + each, 0) / all.length).toBeLessThan(1.4);
    expect(Math.max(...all)).toBeLessThan(5);
  });

  test('stay finite and at least 0, also where there is no paint at all', async () => {
    const none = { K: new Array<number>(36).fill(0), S: new Array<number>(36).fill(0) };
    const { K, S } = await underDrySurface(none);
    expect(Math.min(...K, ...S)).toBeGreaterThanOrEqual(0);
    expect(
      Math.max(...(await shiftOf({ ...builtIn('pb29-ultramarine-blue'), ...none }))),
    ).toBeLessThan(0.01);
  });
});

const spectrum = new Array<number>(36).fill(0.1);
const measured: Paint = {
  id: 'own-1',
  revision: 2,
  name: 'my burnt umber',
  ci: ['PBr7'],
  K: spectrum,
  S: spectrum,
  properties: { ...nothingKnown, staining: 1, lightfastness: 'II' },
  fromMemory: ['transparency', 'staining', 'granulation', 'caution'],
  optics: { from: 'measured', sure: 0.7, why: 'Quite sure.' },
};
const { fromMemory: _, ...allGiven } = measured;
const like: Paint = {
  ...allGiven,
  id: 'own-2',
  revision: 1,
  name: 'my yellow',
  ci: ['PY35'],
  optics: { from: 'like', id: 'hue-cadmium-yellow' },
};

describe('a box kept by an earlier version', () => {
  const former: FormerBox = {
    schema: 1,
    owned: ['pb29-ultramarine-blue', 'own-1'],
    paints: [{ ...measured, revision: 1, name: 'umber' }, measured, like],
    gone: ['own-2'],
    renamed: ['hue-lemon-yellow'],
  };

  test('keeps all it had, and its own paints get one more revision', async () => {
    const box = await renewBox(former);
    expect(box).toMatchObject({
      schema: 2,
      owned: former.owned,
      gone: former.gone,
      renamed: former.renamed,
    });
    expect(box.paints.slice(0, 3)).toEqual(former.paints);
    expect(box.paints.map(({ id, revision }) => [id, revision])).toEqual([
      ['own-1', 1],
      ['own-1', 2],
      ['own-2', 1],
      ['own-1', 3],
      ['own-2', 2],
    ]);
  });

  test('a measured paint looks as before and is as strong as a built-in one of its pigment', async () => {
    const renewed = (await renewBox(former)).paints[3] as Paint;
    const { strength = 0 } = builtIn('pbr7-burnt-umber');
    expect(renewed).toMatchObject({ name: measured.name, optics: measured.optics, strength });
    expect(renewed.mostLoad).toBeCloseTo(20 * strength, 9);
    expect(renewed.K).toEqual((await underDrySurface(measured)).K);
    expect(renewed.properties.lightfastness).toBe('II'); // hers
    expect(renewed.properties.staining).toBe(builtIn('pbr7-burnt-umber').properties.staining);
  });

  test('a paint that is like a built-in one takes all of it from the table of today', async () => {
    const renewed = (await renewBox(former)).paints[4] as Paint;
    const { K, S, strength, mostLoad } = builtIn('hue-cadmium-yellow');
    expect(renewed).toMatchObject({ K, S, strength, mostLoad, ci: ['PY35'] });
    expect(renewed.properties.caution).toBe(traitsOfNames(['PY35'], pigmentTable).caution);
  });

  test('an empty one stays empty', async () => {
    const empty: FormerBox = { schema: 1, owned: null, paints: [], gone: [] };
    expect(await renewBox(empty)).toEqual({ ...empty, schema: 2 });
  });
});

test('of unknown pigments a tube has strength 1', () => {
  expect(tubeOf(['PR1'], 'x')).toEqual({ strength: 1, mostLoad: 20 });
  expect(tubeOf([], 'x')).toEqual({ strength: 1, mostLoad: 20 });
  expect(tubeOf(['PB29'], 'my blue').strength).toBe(builtIn('pb29-ultramarine-blue').strength);
});
