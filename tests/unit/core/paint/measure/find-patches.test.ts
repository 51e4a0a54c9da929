import { describe, expect, it } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import { findPatches } from '../../../../../app/core/paint/measure/find-patches.ts';
import { movedFrame } from '../../../../../app/core/paint/measure/measured-photo.ts';
import { drawnLabs, drawnSheet, type SheetLook } from '../../../../support/paint/drawn-sheet.ts';

const even: SheetLook = {
  light: [0.75, 0.75, 0.75],
  fall: [0, 0],
  turnDegrees: 0,
  noise: 0,
  table: 0,
};

const looks: Record<string, Partial<SheetLook>> = {
  'even light': {},
  'light falling off to the right and below': { fall: [-0.5, -0.25] },
  'warm light': { light: [0.85, 0.7, 0.45] },
  'blue shade': { light: [0.5, 0.6, 0.8] },
  'a turned sheet': { turnDegrees: 5 },
  'a noisy photo': { noise: 0.03 },
  'a dark table round it': { table: 0.05 },
  'all of it at once': {
    light: [0.7, 0.6, 0.42],
    fall: [0.35, -0.3],
    turnDegrees: -4,
    noise: 0.03,
    table: 0.05,
  },
};

describe('patches on a drawn sheet', () => {
  for (const [name, look] of Object.entries(looks)) {
    it(`${name}: all seven, in order, in their colours`, () => {
      const labs = drawnLabs('pbr7-burnt-sienna');
      const { patches, paper } = findPatches(drawnSheet(labs, { ...even, ...look }), null);
      expect(patches.length).toBe(labs.length);
      for (const [n, { lab }] of patches.entries()) {
        expect(colourDifference(lab, labs[n] as typeof lab), `patch ${n + 1}`).toBeLessThan(1.5);
      }
      expect(paper.length).toBeGreaterThan(3);
    });
  }

  it('finds the palest yellow and the deepest blue too', () => {
    for (const id of ['py184-bismuth-vanadate', 'pb60-indanthrone-blue']) {
      const labs = drawnLabs(id);
      const { patches } = findPatches(drawnSheet(labs, { ...even, noise: 0.02 }), null);
      expect(patches.length, id).toBe(labs.length);
    }
  });

  it('measures where she puts the frames', () => {
    const labs = drawnLabs('pbr7-burnt-sienna');
    const raster = drawnSheet(labs, { ...even, fall: [-0.4, 0] });
    const found = findPatches(raster, null);
    const frames = found.patches.map(({ frame }) => movedFrame(frame, 0.01, -0.01)).reverse();
    const again = findPatches(raster, frames);
    for (const [n, { lab, frame }] of again.patches.entries()) {
      expect(frame).toEqual(frames[n]);
      expect(colourDifference(lab, [...labs].reverse()[n] as typeof lab)).toBeLessThan(1);
    }
  });

  it('a frame half on paper is told by its spread', () => {
    const raster = drawnSheet(drawnLabs('pbr7-burnt-sienna'), even);
    const [first] = findPatches(raster, null).patches;
    if (!first) throw new Error('nothing found');
    expect(first.spread).toBeLessThan(1);
    const slipped = movedFrame(first.frame, first.frame.width * 0.49, 0);
    const [off] = findPatches(raster, [slipped]).patches;
    expect(off?.spread).toBeGreaterThan(8);
  });
});

describe('photos nothing can be measured on', () => {
  const labs = drawnLabs('pbr7-burnt-sienna');

  it('no paper: painted all over', () => {
    const raster = drawnSheet(labs, even);
    for (let p = 0; p < raster.red.length; p++) {
      const x = (p % 400) / 400;
      const y = p / 400 / 300;
      raster.red[p] = 0.2 + 0.6 * Math.abs(Math.sin(9 * x + 5 * y));
      raster.green[p] = 0.2 + 0.6 * Math.abs(Math.sin(5 * x - 11 * y));
      raster.blue[p] = 0.2 + 0.6 * Math.abs(Math.cos(13 * x * y));
    }
    expect(() => findPatches(raster, null)).toThrow(/No bare paper was found/);
  });

  it('too dark, burnt out, without a patch', () => {
    const of = (look: Partial<SheetLook>, list = labs) =>
      findPatches(drawnSheet(list, { ...even, ...look }), null);
    expect(() => of({ light: [0.05, 0.05, 0.05] })).toThrow(/too dark/);
    expect(() => of({ light: [1, 1, 1] })).toThrow(/burnt out/);
    expect(() => of({}, [])).toThrow(/No patches were found/);
  });
});
