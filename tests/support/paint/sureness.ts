import type { Lab } from '../../../app/core/colour/lab.ts';
import { drySurface } from '../../../app/core/colour/surface.ts';
import type { PaintSpectra } from '../../../app/core/paint/layer.ts';
import type { PaintPatch } from '../../../app/core/paint/measure/paint-measure.ts';
import type { Paint } from '../../../app/core/paint/paint.ts';
import { seeded } from '../reading/seeded.ts';
import {
  errorAmong,
  labSeen,
  type MeasuringWay,
  madeChart,
  mean,
  mixError,
  paperSeen,
  type TruePaint,
} from './calibration.ts';
import { normals } from './made-ladder.ts';

/** A paint of the optics table as if it were true. */
export const tablePaint = ({ K, S, ci }: Paint): TruePaint => ({
  K,
  S,
  ci,
  surface: drySurface,
  perUnit: 1,
});

/** Two frames that hold each other's patch, and one slipped half off its patch, as a painter may leave them. */
function withSlip(patches: readonly PaintPatch[], random: () => number): PaintPatch[] {
  const slipped = [...patches];
  const steps = patches.filter(({ is }) => is.kind === 'step').length;
  const n = Math.floor(random() * (steps - 1));
  const [one, two] = [patches[n], patches[n + 1]] as [PaintPatch, PaintPatch];
  const kind = random();
  if (kind < 0.33) {
    const share = 0.2 + 0.6 * random();
    const lab = one.lab.map(
      (value, c) => value + share * ((labSeen(paperSeen)[c] as number) - value),
    );
    slipped[n] = { ...one, lab: lab as unknown as Lab, even: false };
  } else if (kind < 0.67 && steps > 2) {
    slipped[n] = { ...one, lab: two.lab };
    slipped[n + 1] = { ...two, lab: one.lab };
  }
  return slipped;
}

const ladders = [
  [16, 8, 4, 2, 1],
  [16, 8, 4, 2, 1],
  [32, 16, 8, 4, 2, 1],
  [16, 4, 1],
  [8, 2],
  [32, 16, 8],
];

/**
 * A chart as charts come: from two steps to six, some strong ones only; every second with a step over black; every
 * third done carelessly; taken with a camera of its own.
 */
export function chartAsItComes(paint: TruePaint, way: MeasuringWay, seed: number): PaintPatch[] {
  const random = seeded(seed);
  const normal = normals(random);
  const careless = random() < 1 / 3;
  const camera = {
    whiteBalance: 0.12,
    curve: Math.min(0.6, Math.max(0, 0.15 + 0.2 * normal())),
    saturation: 1.05 + 0.07 * normal(),
  };
  const design = {
    steps: ladders[Math.floor(random() * ladders.length)] as number[],
    overBlack: random() < 0.5 ? [8] : [],
    noise: careless ? 3 : 1.5,
    loadError: careless ? 0.4 : 0.15,
    camera: random() < 0.1 ? null : camera,
  };
  const patches = madeChart(paint, design, way, Math.floor(1e9 * random()));
  return careless ? withSlip(patches, random) : patches;
}

/** Loads at which a found paint is held beside the true one, and how much stronger or weaker it may be taken. */
const heldBeside = [1, 4, 8, 16];
const strengths = Array.from({ length: 33 }, (_, n) => 2.5 ** (n / 16 - 1));

/**
 * A found paint as strong as fits the true one best: a photo does not tell how strong a tube is, and a scrap puts it
 * right. What is left is a matter of colour and hiding.
 */
export function asStrong(found: PaintSpectra, paint: TruePaint, way: MeasuringWay): PaintSpectra {
  const tried = strengths.map((times) => {
    const K = Array.from(found.K, (k) => k * times);
    const S = Array.from(found.S, (s) => s * times);
    return {
      K,
      S,
      off: mean(heldBeside.map((load) => mixError([{ K, S }], [paint], [load], way))),
    };
  });
  return tried.reduce((least, each) => (each.off < least.off ? each : least));
}

/** How sure the app is of a paint, 0..1, and how far its mixes are truly off. */
export interface Sureness {
  readonly sure: number;
  readonly error: number;
}

/** Charts as they come of each paint; those nothing can be learned from, as it is told, are left out. */
export async function surenessOf(
  paints: readonly TruePaint[],
  seeds: readonly number[],
  way: MeasuringWay,
): Promise<Sureness[]> {
  const all: Sureness[] = [];
  for (const seed of seeds) {
    for (const [n, paint] of paints.entries()) {
      try {
        const found = await way.fit(chartAsItComes(paint, way, 1000 * seed + n), paint.ci);
        const others = paints.filter((other) => other !== paint);
        const error = errorAmong(asStrong(found, paint, way), paint, others, way);
        all.push({ sure: found.sure, error });
      } catch (thrown) {
        if (!(thrown instanceof RangeError)) throw thrown;
      }
    }
  }
  return all;
}

/** From this on the screen says 'Quite sure'. */
export const quiteSure = 0.7;

const ranksOf = (values: readonly number[]): number[] => {
  const sorted = values.toSorted((a, b) => a - b);
  return values.map((value) => (sorted.indexOf(value) + sorted.lastIndexOf(value)) / 2);
};

/** Spearman's rank correlation of sureness and true error, and how often 'quite sure' is off by more than 4.5. */
export function surenessFigures(all: readonly Sureness[]) {
  const [sure, error] = [
    ranksOf(all.map((each) => each.sure)),
    ranksOf(all.map((each) => each.error)),
  ];
  const middle = mean(sure);
  const product = (one: readonly number[], two: readonly number[]): number =>
    one.reduce((sum, rank, n) => sum + (rank - middle) * ((two[n] as number) - middle), 0);
  const quite = all.filter((each) => each.sure >= quiteSure);
  return {
    spearman: product(sure, error) / Math.sqrt(product(sure, sure) * product(error, error)),
    quite: quite.length,
    wrong: quite.filter((each) => each.error > 4.5).length,
    all: all.length,
    meanError: mean(all.map((each) => each.error)),
    quiteError: mean(quite.map((each) => each.error)),
  };
}
