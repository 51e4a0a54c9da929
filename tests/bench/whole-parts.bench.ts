import { colourDifference } from '../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../app/core/colour/lab.ts';
import { labOfReflectance, spectrumSize } from '../../app/core/colour/spectrum.ts';
import { costOfAnotherPaint } from '../../app/core/limits.ts';
import { combinations } from '../../app/core/numeric/combinations.ts';
import { defaultPaper } from '../../app/core/paint/colour-of-washes.ts';
import { layOver, type MixSpectra, mixSpectra, paintLayer } from '../../app/core/paint/layer.ts';
import type { Paint } from '../../app/core/paint/paint.ts';
import { buildMixLibrary, usualPaints } from '../../app/core/palette/library/mix-library.ts';
import { CostTables } from '../../app/core/palette/search/cost-tables.ts';
import type { Bench } from './bench.ts';
import { noPause } from './read-bytes.ts';
import { seededRandom } from './seeded-random.ts';

/** Figures worth quoting come from 200 targets: WHOLE_PARTS_TARGETS=200 (minutes). */
const targetCount = Number(process.env.WHOLE_PARTS_TARGETS ?? 3);
/** So many of them are timed. */
const timedCount = 3;
const paintCount = 5;

/** A colour to be mixed, and the paints there are. */
interface MixCase {
  readonly target: Lab;
  readonly palette: readonly Paint[];
}

const sheet = new Float64Array(spectrumSize);

/** The colour of a mix as one wash on paper, at a share of its full coat. */
function labOf({ K, S, coat }: MixSpectra, share: number): Lab {
  return labOfReflectance(layOver(paintLayer(K, S, share * coat), defaultPaper, sheet));
}

/** Targets any painter might want: mixes of three paints of the whole box in any shares and strength. */
function seededCases(count: number, seed: number): MixCase[] {
  const random = seededRandom(seed);
  const some = (n: number): Paint[] => {
    const left = [...usualPaints];
    return Array.from(
      { length: n },
      () => left.splice(Math.floor(random() * left.length), 1)[0] as Paint,
    );
  };
  return Array.from({ length: count }, () => ({
    palette: some(paintCount),
    target: labOf(mixSpectra(some(3), [random(), random(), random()]), 2 ** (-6 * random())),
  }));
}

/**
 * Least CIEDE2000 of all whole-part mixes of a palette, found as the search for a palette finds it: every mix
 * at half-octave loads, then the least cost of every group of paints.
 */
async function bestWhole({ palette, target }: MixCase): Promise<number> {
  const library = await buildMixLibrary(palette, noPause);
  const targets = [{ lab: target, weight: 1, band: 1, family: 1 }];
  const unpriced = palette.map(() => 0);
  const { costs } = await CostTables.of(library, targets, unpriced, noPause);
  let best = { cost: Number.POSITIVE_INFINITY, paints: 1 };
  for (const [n, { members }] of library.groups.entries()) {
    const cost = costs[n] as number;
    if (cost < best.cost) best = { cost, paints: members.length };
  }
  return best.cost - costOfAnotherPaint * (best.paints - 1);
}

const golden = (Math.sqrt(5) - 1) / 2;

/** Least CIEDE2000 of paints in these shares up to a full coat: half octaves, then golden section. */
function bestOverLoads(paints: readonly Paint[], parts: readonly number[], target: Lab): number {
  const mix = mixSpectra(paints, parts);
  const differenceFor = (octaves: number): number =>
    colourDifference(target, labOf(mix, 2 ** octaves));
  let middle = -9;
  let least = Number.POSITIVE_INFINITY;
  for (let octaves = -9; octaves <= 0; octaves += 0.5) {
    const own = differenceFor(octaves);
    if (own < least) [middle, least] = [octaves, own];
  }
  let low = middle - 0.5;
  let high = Math.min(0, middle + 0.5);
  for (let i = 0; i < 14; i++) {
    const one = high - golden * (high - low);
    const two = low + golden * (high - low);
    if (differenceFor(one) <= differenceFor(two)) high = two;
    else low = one;
  }
  return Math.min(least, differenceFor((low + high) / 2));
}

/** Any shares of any three: from four starts the shares bettered by halving steps; then these in eighths. */
function bestShares({ palette, target }: MixCase): { difference: number; inEighths: number } {
  let best = { difference: Number.POSITIVE_INFINITY, inEighths: Number.NaN };
  for (const members of combinations(palette.length, 3)) {
    const paints = members.map((n) => palette[n] as Paint);
    for (const start of [
      [1, 1, 1],
      [4, 1, 1],
      [1, 4, 1],
      [1, 1, 4],
    ]) {
      let shares = start.map((part) => part / start.reduce((a, b) => a + b));
      let difference = bestOverLoads(paints, shares, target);
      for (let step = 0.25; step > 0.002; ) {
        let moved = false;
        for (const i of [0, 1, 2]) {
          for (const j of [0, 1, 2]) {
            const by = Math.min(step, shares[i] as number);
            if (i === j || by <= 0) continue;
            const next = shares.map((s, n) => (n === i ? s - by : n === j ? s + by : s));
            const own = bestOverLoads(paints, next, target);
            if (own >= difference) continue;
            [shares, difference, moved] = [next, own, true];
          }
        }
        if (!moved) step /= 2;
      }
      if (difference >= best.difference) continue;
      const eighths = shares.map((share) => Math.round(share * 8));
      best = { difference, inEighths: bestOverLoads(paints, eighths, target) };
    }
  }
  return best;
}

const mean = (all: readonly number[]): string =>
  (all.reduce((sum, each) => sum + each, 0) / all.length).toFixed(2);

async function bestWholes(cases: readonly MixCase[]): Promise<number[]> {
  const found: number[] = [];
  for (const each of cases) found.push(await bestWhole(each));
  return found;
}

/** What whole parts cost against any shares, and what rounding those shares would cost. */
export async function benches(): Promise<Bench[]> {
  const cases = seededCases(targetCount, 11);
  const timed = cases.slice(0, timedCount);
  const whole = await bestWholes(cases);
  const free = cases.map(bestShares);
  const any = free.map(({ difference }) => difference);
  const eighths = free.map(({ inEighths }) => inEighths);
  return [
    {
      name: 'whole parts',
      work: `${timed.length} targets, each mixed from ${paintCount} paints; the peer is no library but a descent over the shares of every three paints, at any load`,
      ours: {
        name: 'all mixes of the palette, then its cost tables',
        run: () => bestWholes(timed),
      },
      peer: { name: 'any shares, then in eighths', run: () => timed.map(bestShares) },
      agreement: `${cases.length} targets, mean CIEDE2000: whole parts at half-octave loads ${mean(whole)}, any shares ${mean(any)}, those in eighths ${mean(eighths)}`,
    },
  ];
}
