import { describe, expect, it } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { findPatches } from '../../../../../app/core/paint/measure/find-patches.ts';
import {
  movedFrame,
  type PatchFrame,
} from '../../../../../app/core/paint/measure/measured-photo.ts';
import type { LinearRaster } from '../../../../../app/core/raster/linear-raster.ts';
import {
  drawnLabs,
  drawnSheet,
  inkLab,
  type SheetLook,
} from '../../../../support/paint/drawn-sheet.ts';

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
  'warm light': { light: [0.8, 0.7, 0.52] },
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
        // These photos have no tone curve, and the usual one is taken back all the same; where the light is
        // coloured they are drawn for other sensors than those of `camera.ts`.
        const limit = 'light' in look ? 3 : 2;
        expect(colourDifference(lab, labs[n] as typeof lab), `patch ${n + 1}`).toBeLessThan(limit);
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
      expect(colourDifference(lab, [...labs].reverse()[n] as typeof lab)).toBeLessThan(1.5);
    }
  });

  it('a frame partly on paper is told from one that is grainy, and from a wash that runs out', () => {
    const labs = drawnLabs('pbr7-burnt-sienna');
    const evenness = (raster: LinearRaster, frame: PatchFrame) =>
      findPatches(raster, [frame]).patches[0]?.evenness;
    const raster = drawnSheet(labs, even);
    const grainy = drawnSheet(labs, { ...even, grain: 0.35 });
    const frames = findPatches(raster, null).patches.map(({ frame }) => frame);
    for (const frame of frames) {
      expect(evenness(raster, frame)).toBe('even');
      expect(evenness(grainy, frame)).toBe('even');
    }
    const [first] = frames as [PatchFrame];
    for (const share of [0.4, 0.5, 0.6]) {
      const aside = movedFrame(first, first.width * share, 0);
      const askew = movedFrame(first, first.width * (share - 0.1), first.height * (share - 0.1));
      for (const slipped of [aside, askew]) {
        expect(evenness(raster, slipped), `${share}`).toBe('two colours');
        expect(evenness(grainy, slipped), `${share}`).toBe('two colours');
      }
    }
    // A wash that pales from left to right: light grows evenly over the patch.
    const { width } = raster;
    for (const plane of [raster.red, raster.green, raster.blue]) {
      for (let p = 0; p < plane.length; p++) {
        const across = ((p % width) / width - first.left) / first.width;
        if (across >= 0 && across <= 1) plane[p] = (plane[p] as number) * (0.2 + 1.4 * across);
      }
    }
    expect(evenness(raster, first)).toBe('slope');
  });
});

describe('a patch across a black line', () => {
  const labs = drawnLabs('pbr7-burnt-sienna');
  const on = labs[1] as Lab;
  // Opaque paint hides the line, transparent paint hardly shows on it.
  const overs = { transparent: [21, 3, 3], opaque: [44, 24, 32] } satisfies Record<string, Lab>;

  for (const [kind, over] of Object.entries(overs) as [string, Lab][]) {
    for (const upright of [false, true]) {
      for (const turnDegrees of upright ? [0, 5] : [-4]) {
        it(`${kind}, line ${upright ? 'upright' : 'level'}, turned by ${turnDegrees}: parted in three`, () => {
          const look = { ...even, turnDegrees, noise: 0.01, grain: 0.05 };
          const line = { over, on, upright };
          const { patches } = findPatches(drawnSheet(labs, { ...look, line }), null);
          expect(patches.length).toBe(labs.length + 3);
          const colourOn = (ground: string): Lab | undefined =>
            patches.find((each) => each.ground === ground)?.lab;
          expect(colourDifference(colourOn('bare line') as Lab, inkLab)).toBeLessThan(2);
          expect(colourDifference(colourOn('line') as Lab, over)).toBeLessThan(2);
          const n = patches.findIndex(({ ground }) => ground === 'line');
          expect(colourDifference(patches[n - 1]?.lab as Lab, on)).toBeLessThan(2);
        });
      }
    }
  }

  it('anchors the tone curve: with an S-curve in the photo colours come nearer with the line than without', () => {
    const curved = (raster: LinearRaster): LinearRaster => {
      for (const plane of [raster.red, raster.green, raster.blue]) {
        for (let p = 0; p < plane.length; p++) {
          const v = Math.min(1, (plane[p] as number) ** (1 / 2.2));
          plane[p] = (0.5 * v + 0.5 * v * v * (3 - 2 * v)) ** 2.2;
        }
      }
      return raster;
    };
    const errorOf = (look: SheetLook): number => {
      const { patches } = findPatches(curved(drawnSheet(labs, look)), null);
      const off = labs.map((lab, n) => colourDifference(patches[n]?.lab as Lab, lab));
      return off.reduce((sum, each) => sum + each, 0) / off.length;
    };
    const [without, withLine] = [
      errorOf(even),
      errorOf({ ...even, line: { over: [21, 3, 3], on } }),
    ];
    console.info(`S-curve: ${without.toFixed(2)} without, ${withLine.toFixed(2)} with the line`);
    expect(withLine).toBeLessThan(0.75 * without);
  });

  it('is heeded too where she names her own frame the line', () => {
    const raster = drawnSheet(labs, { ...even, line: { over: [21, 3, 3], on } });
    const found = findPatches(raster, null).patches;
    const frames = found.map(({ frame }) => frame);
    const bare = found.findIndex(({ ground }) => ground === 'bare line');
    const named = findPatches(raster, frames, bare).patches.map(({ lab }) => lab);
    expect(named).toEqual(found.map(({ lab }) => lab));
    expect(findPatches(raster, frames).patches.map(({ lab }) => lab)).not.toEqual(named);
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
