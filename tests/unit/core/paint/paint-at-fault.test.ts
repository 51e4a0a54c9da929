import { describe, expect, it, test } from 'vitest';
import { colourDifference } from '../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import {
  colourOfWashes,
  defaultPaper,
  loadForLightness,
} from '../../../../app/core/paint/colour-of-washes.ts';
import { mixSpectra } from '../../../../app/core/paint/layer.ts';
import { wholeParts } from '../../../../app/core/paint/mix.ts';
import { isWhiteOrBlack, type Paint } from '../../../../app/core/paint/paint.ts';
import {
  lookAtScrap,
  type ScrapHue,
  type ScrapVerdict,
} from '../../../../app/core/paint/paint-at-fault.ts';
import { paintBox, placeAmongOwned } from '../../../../app/core/paint/paint-box.ts';
import {
  correctedPaint,
  type StrengthCorrection,
} from '../../../../app/core/paint/strength-corrections.ts';
import { seeded } from '../../../support/reading/seeded.ts';

const owned = paintBox.filter(({ id, ci }) => placeAmongOwned(id) >= 0 && !isWhiteOrBlack(ci));
const stronger = (paint: Paint, factor: number): Paint =>
  correctedPaint(paint, [{ paint: paint.id, factor }]);

interface Squeezed {
  readonly parts: readonly number[];
  readonly load: number;
}
const colour = (paints: readonly Paint[], { parts, load }: Squeezed): Lab =>
  colourOfWashes([{ paints, parts, load }]);

/** Hue angles of the words: the tests' own, degrees in a*, b* (from memory). */
const wordAngles = { red: 25, yellow: 90, green: 160, blue: 260 } as const;
const words: readonly ScrapHue[] = ['red', 'yellow', 'green', 'blue', 'dull'];

/** What somebody says of a scrap beside its swatch: what is seen of hue and of depth, or nothing (own). */
function sayOf(seen: Lab, swatch: Lab): ScrapVerdict {
  const chroma = Math.hypot(swatch[1], swatch[2]);
  const seenMore = (word: ScrapHue): number => {
    if (word === 'dull') return chroma - Math.hypot(seen[1], seen[2]);
    const angle = (wordAngles[word] * Math.PI) / 180;
    return (seen[1] - swatch[1]) * Math.cos(angle) + (seen[2] - swatch[2]) * Math.sin(angle);
  };
  const best = [...words].sort((one, two) => seenMore(two) - seenMore(one))[0] as ScrapHue;
  const darker = swatch[0] - seen[0];
  return {
    depth: darker > 2 ? 'stronger' : darker < -2 ? 'weaker' : null,
    hue: seenMore(best) / (1 + 0.045 * chroma) > 1.5 ? best : null,
  };
}

/** The whole parts and load that come nearest a colour, as a plan would find them. */
function planFor(target: Lab, paints: readonly Paint[]): Squeezed {
  let best = { parts: [1], load: 0 } as Squeezed;
  let least = Number.POSITIVE_INFINITY;
  for (const parts of wholeParts(paints.length)) {
    const load = loadForLightness(mixSpectra(paints, parts), defaultPaper, target[0]);
    for (const times of load ? [0.93, 1, 1.08] : []) {
      const tried = { parts, load: (load ?? 0) * times };
      const off = colourDifference(colour(paints, tried), target);
      if (off < least) best = tried;
      least = Math.min(least, off);
    }
  }
  return best;
}

interface Tally {
  told: number;
  found: number;
  nearer: number;
  before: number;
  after: number;
}

/** Mixes of boxes in which one paint, nobody knows which, is stronger or weaker than the table says. */
function simulate(size: number, factor: number, cases: number): Tally {
  const random = seeded(31 * size + Math.round(100 * factor));
  const among = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const tally = { told: 0, found: 0, nearer: 0, before: 0, after: 0 };
  for (let n = 0; n < cases; n++) {
    const paints = new Set<Paint>();
    while (paints.size < size) paints.add(among(owned));
    const reckoned = [...paints];
    const odd = among(reckoned);
    const real = reckoned.map((paint) => (paint === odd ? stronger(paint, factor) : paint));
    const parts = among(wholeParts(size));
    const load = mixSpectra(reckoned, parts).coat * (0.08 + 0.5 * random() ** 2);
    const target = colour(reckoned, { parts, load });
    const mix = { parts: reckoned.map(({ id }, i) => ({ paint: id, parts: parts[i] ?? 0 })), load };
    const said = sayOf(colour(real, { parts, load }), target);
    const { fault } = lookAtScrap(reckoned, mix, said, []);
    if (said.hue === null) {
      expect(fault).toBeNull(); // that is the water
      continue;
    }
    tally.told++;
    if (!fault) continue;
    const { paint, seems } = fault;
    if (paint === odd.id && (seems === 'stronger') === factor > 1) tally.found++;
    const corrections = [{ paint, factor: seems === 'stronger' ? 1.25 : 0.8 }];
    const planned = planFor(
      target,
      reckoned.map((each) => correctedPaint(each, corrections)),
    );
    const before = colourDifference(colour(real, { parts, load }), target);
    const after = colourDifference(colour(real, planned), target);
    tally.before += before;
    tally.after += after;
    if (after < before) tally.nearer++;
  }
  return tally;
}

// Measured: all of 119 and 103 told are found where it is stronger, CIEDE2000 3.8 -> 0.7 and 3.8 -> 1.3; 71 of 105 and
// 61 of 84 where it is weaker, 3.8 -> 1.6 and 4.0 -> 2.1: hue alone does not tell a weak paint from its strong partner.
test.each([
  [2, 1.3, 0.97, 0.97, 0.25],
  [3, 1.3, 0.97, 0.97, 0.4],
  [2, 1 / 1.3, 0.6, 0.7, 0.5],
  [3, 1 / 1.3, 0.65, 0.7, 0.6],
])(
  'one of %i paints is %f times as strong: what she says finds it, the next plan is nearer',
  (...row) => {
    const [size, factor, found, nearer, left] = row;
    const tally = simulate(size, factor, 300);
    expect(tally.told).toBeGreaterThan(60);
    expect(tally.found / tally.told).toBeGreaterThan(found);
    expect(tally.nearer / tally.told).toBeGreaterThan(nearer);
    expect(tally.after / tally.before).toBeLessThan(left);
  },
);

const blue = 'pb29-ultramarine-blue';
const yellow = 'py74-arylide-yellow';
const sienna = 'pbr7-burnt-sienna';
const faultOf = (
  parts: Readonly<Record<string, number>>,
  depth: ScrapVerdict['depth'],
  hue: ScrapHue | null,
  made: readonly StrengthCorrection[] = [],
) => {
  const mix = { parts: Object.entries(parts).map(([paint, n]) => ({ paint, parts: n })), load: 1 };
  const { fault } = lookAtScrap(paintBox, mix, { depth, hue }, made);
  return fault && `${fault.paint} ${fault.seems}`;
};
const greens = { [blue]: 1, [yellow]: 1 };

describe('by the rule', () => {
  it.each([
    [greens, null, 'blue', `${blue} stronger`],
    [greens, 'stronger', 'blue', `${blue} stronger`],
    [greens, 'weaker', 'blue', `${yellow} weaker`],
    [greens, null, 'yellow', `${yellow} stronger`],
    [greens, 'weaker', 'yellow', `${blue} weaker`],
    [{ [blue]: 2, [sienna]: 1 }, null, 'blue', `${blue} stronger`],
    [{ [blue]: 2, [sienna]: 1 }, null, 'yellow', `${sienna} stronger`],
    [{ [blue]: 2, [sienna]: 1 }, null, 'dull', `${sienna} stronger`],
    [{ [blue]: 2, [sienna]: 1 }, 'weaker', 'dull', `${blue} weaker`],
  ] as const)('%j %s, too %s: %s', (parts, depth, hue, fault) => {
    expect(faultOf(parts, depth, hue)).toBe(fault);
  });

  it('depth alone is the water, and a paint by itself has no other to be too much against', () => {
    expect(faultOf(greens, 'stronger', null)).toBeNull();
    expect(faultOf(greens, 'weaker', null)).toBeNull();
    expect(faultOf({ [blue]: 1 }, null, 'blue')).toBeNull();
  });

  it("a colour that none of its paints would turn to is nobody's fault", () => {
    expect(faultOf({ 'pg7-phthalocyanine-green': 1, [yellow]: 2 }, null, 'red')).toBeNull();
  });

  it('the opposite takes a correction back before it makes another', () => {
    expect(faultOf(greens, null, 'yellow', [{ paint: blue, factor: 1.25 }])).toBe(`${blue} weaker`);
    expect(faultOf(greens, null, 'yellow', [{ paint: yellow, factor: 0.8 }])).toBe(
      `${yellow} stronger`,
    );
    expect(faultOf(greens, 'stronger', 'yellow', [{ paint: blue, factor: 1.25 }])).toBe(
      `${yellow} stronger`,
    );
  });
});
