import type { Lab } from '../../colour/lab.ts';
import { spectrumSize } from '../../colour/spectrum.ts';
import { inside } from '../../colour/surface.ts';
import {
  minimiseSquares,
  type NormalEquations,
  type Pause,
} from '../../numeric/levenberg-marquardt.ts';
import type { PaintSpectra } from '../layer.ts';
import { addPatch, settleAmounts } from './joint-equations.ts';
import {
  emptyLook,
  type JointPatch,
  lookAtPatch,
  type PatchOptics,
  patchTarget,
} from './joint-patch.ts';
import {
  addPrior,
  type PaintPrior,
  paintLike,
  paintSize,
  usualPaint,
  whitePaint,
} from './paint-prior.ts';
import { nearestSpectrum } from './smoothest-spectrum.ts';

/** What is known of a paint before the fit. K and S are per unit of amount. */
export type JointPaint =
  /** Its K and S stay as they are. */
  | { readonly kind: 'known'; readonly spectra: PaintSpectra }
  /** Near these: K and S may be off, neighbouring samples together; standard deviation of the logarithm. */
  | { readonly kind: 'alike'; readonly spectra: PaintSpectra; readonly doubt: number }
  /** Nothing but that it is a paint; it needs a patch of its own on a light ground. */
  | { readonly kind: 'sought'; readonly white: boolean };

export interface JointFit {
  /** K and S of every paint, known ones too, in the order given. */
  readonly paints: readonly PaintSpectra[];
  /** Colour each patch should have, and ln of each of its amounts over the one stated. */
  readonly expected: readonly Lab[];
  readonly drifts: readonly Float64Array[];
  /** Logarithms of all K and S that were sought, as they came out. */
  readonly place: Float64Array;
  /** Sum of squared misfits, in units of the noise, and of what the priors cost. */
  readonly cost: number;
  readonly rounds: number;
  readonly converged: boolean;
}

/** K and S under this are as good as none. */
const leastSpectra = 1e-9;

const logsOf = ({ K, S }: PaintSpectra): Float64Array =>
  Float64Array.from({ length: paintSize }, (_, i) =>
    Math.log(Math.max(leastSpectra, i < spectrumSize ? K[i] : S[i - spectrumSize])),
  );

const spectraOf = (values: Float64Array): PaintSpectra => ({
  K: values.slice(0, spectrumSize),
  S: values.slice(spectrumSize),
});

/** A paint that is found: what is expected of it, from where it starts, and where its unknowns stand. */
interface FreePaint {
  readonly prior: PaintPrior;
  readonly first: number;
}

/** Reflectance at 550 nm: over a dark ground nothing is learned of absorption. */
const lightGround = 0.3;
const midSample = 17;
/** The lightness the table's pale wash is counted by, and its paper, as seen (see pigment-optics.json). */
const paleWash = 0.4;
const palePaper = 0.87;

/** Expectation of a paint by the thinnest patch it is alone in, as if that did not scatter (Beer's law). */
function priorFromPatches(
  patches: readonly JointPatch[],
  paint: number,
  white: boolean,
  { surface }: PatchOptics,
): PaintPrior {
  const alone = patches.filter(
    ({ shares, ground }) =>
      shares.length === 1 && shares[0].paint === paint && ground[midSample] > lightGround,
  );
  if (alone.length === 0) {
    throw new RangeError(`Paint ${paint} has no patch of its own on a light ground.`);
  }
  const { lab, reflectance, ground, shares } = alone.reduce((least, each) =>
    each.shares[0].amount < least.shares[0].amount ? each : least,
  );
  const { amount } = shares[0];
  const seen = reflectance ?? nearestSpectrum(lab);
  const depths = Float64Array.from(ground, (under, i) =>
    Math.max(0.002, Math.log(under / Math.max(0.004, inside(seen[i], surface))) / 2),
  );
  const logK = depths.map((depth) => Math.log(depth / amount));
  const paleDepth = Math.log(inside(palePaper, surface) / inside(paleWash, surface));
  const deepest = 2 * Math.max(...depths.subarray(2, 33)); // 400..700 nm
  return white ? whitePaint(logK) : usualPaint(logK, Math.log(deepest / paleDepth / amount));
}

function freePaints(
  paints: readonly JointPaint[],
  patches: readonly JointPatch[],
  optics: PatchOptics,
): (FreePaint | null)[] {
  let first = 0;
  return paints.map((paint, n) => {
    if (paint.kind === 'known') return null;
    const place = first;
    first += paintSize;
    if (paint.kind === 'alike') {
      return { prior: paintLike(logsOf(paint.spectra), paint.doubt), first: place };
    }
    return { prior: priorFromPatches(patches, n, paint.white, optics), first: place };
  });
}

/** Patches, the paints in them, and how they are seen. */
export interface JointProblem {
  readonly patches: readonly JointPatch[];
  readonly paints: readonly JointPaint[];
  readonly optics: PatchOptics;
}

/** The sum of squares over all free paints, and what the fit comes to at a place. */
export function jointSquares({ patches, paints, optics }: JointProblem) {
  for (const { shares } of patches) {
    const named = new Set(shares.map(({ paint }) => paint));
    if (named.size < shares.length) throw new RangeError('A patch names a paint twice.');
    for (const paint of named) {
      if (!paints[paint]) throw new RangeError(`There is no paint ${paint}.`);
    }
  }
  const free = freePaints(paints, patches, optics);
  const sought = free.filter((paint) => paint !== null);
  const targets = patches.map((patch) => patchTarget(patch, optics));
  const firsts = patches.map(({ shares }) => shares.map(({ paint }) => free[paint]?.first ?? -1));
  const look = emptyLook(Math.max(0, ...patches.map(({ shares }) => shares.length)));
  const size = sought.length * paintSize;
  const start = new Float64Array(size);
  for (const paint of sought) start.set(paint.prior.centre, paint.first);

  const paintsAt = (place: Float64Array): Float64Array[] =>
    paints.map((paint, n) => {
      const first = free[n]?.first;
      const logs =
        paint.kind === 'known'
          ? logsOf(paint.spectra)
          : place.subarray(first, (first ?? 0) + paintSize);
      return Float64Array.from(logs, Math.exp);
    });
  const costAt = (place: Float64Array): number => {
    const mixed = paintsAt(place);
    let cost = 0;
    for (const { prior, first } of sought) cost += addPrior(prior, place, first, null);
    for (const target of targets) {
      settleAmounts(target, mixed, optics, look);
      cost += look.cost;
    }
    return cost;
  };
  const equationsAt = (place: Float64Array): NormalEquations => {
    const mixed = paintsAt(place);
    const matrix = new Float64Array(size * size);
    const right = new Float64Array(size);
    let cost = 0;
    for (const { prior, first } of sought) cost += addPrior(prior, place, first, { matrix, right });
    for (const [n, target] of targets.entries()) {
      settleAmounts(target, mixed, optics, look);
      cost += look.cost;
      addPatch({ matrix, right }, target, firsts[n], look);
    }
    return { matrix, right, cost };
  };
  const looksAt = (place: Float64Array) => {
    const mixed = paintsAt(place);
    const looks = targets.map((target) => {
      settleAmounts(target, mixed, optics, look);
      const [l, a, b] = look.lab;
      const lab: Lab = [l, a, b];
      return { lab, drift: look.drift.slice(0, target.patch.shares.length) };
    });
    return { paints: mixed.map(spectraOf), looks };
  };
  /** How the colour of a patch (seen lightness, chroma, hue; CIEDE2000) moves with all that is sought: three rows. */
  const slopesAt = (place: Float64Array, patch: JointPatch): Float64Array[] => {
    const mixed = paintsAt(place);
    const plain = emptyLook(patch.shares.length);
    lookAtPatch(patchTarget(patch, optics), mixed, optics, plain);
    const [l, a, b] = plain.lab;
    lookAtPatch(patchTarget({ ...patch, lab: [l, a, b], noise: 1 }, optics), mixed, optics, plain);
    const columns = patch.shares.length * paintSize;
    return [0, 1, 2].map((c) => {
      const row = new Float64Array(size);
      for (const [n, { paint }] of patch.shares.entries()) {
        const first = free[paint]?.first;
        if (first === undefined) continue;
        const from = c * columns + n * paintSize;
        row.set(plain.rows.subarray(from, from + paintSize), first);
      }
      return row;
    });
  };
  return { start, costAt, equationsAt, looksAt, slopesAt };
}

/** No round changes K or S by more than e^1.5, 4.5 times. */
const longestStep = 1.5;
/** A hundred-thousandth of the cost moves no colour by 0.01. */
const tolerance = 1e-5;
/** Thirteen paints in 662 patches took 13 to 23, from wherever they started. */
const mostRounds = 200;

/**
 * K and S of paints that lie together in patches (ladders, mixtures, a chart of one-to-one mixes), all
 * found at once: each patch's CIEDE2000, and its reflectance where measured, over its noise; amounts within
 * their doubts; the usual priors. Least squares as Walowit, McCarthy, Berns (1987), Color Res. Appl. 12,
 * 340-343, over the surface of Saunderson (1942). Deterministic; throws a RangeError for a paint that no
 * patch tells about.
 */
export async function fitJointly(problem: JointProblem, checkpoint: Pause): Promise<JointFit> {
  const squares = jointSquares(problem);
  const { place, cost, rounds, converged } = await minimiseSquares(
    squares.start,
    { ...squares, longestStep, tolerance, mostRounds },
    checkpoint,
  );
  const found = squares.looksAt(place);
  return {
    paints: found.paints,
    expected: found.looks.map(({ lab }) => lab),
    drifts: found.looks.map(({ drift }) => drift),
    place,
    cost,
    rounds,
    converged,
  };
}
