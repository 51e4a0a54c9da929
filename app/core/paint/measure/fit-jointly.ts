import type { Lab } from '../../colour/lab.ts';
import { spectrumSize } from '../../colour/spectrum.ts';
import { inside } from '../../colour/surface.ts';
import {
  minimiseSquares,
  type NormalEquations,
  type Pause,
} from '../../numeric/levenberg-marquardt.ts';
import type { PaintSpectra } from '../layer.ts';
import { spectrumFromLab } from './first-guess.ts';
import { fitEquations, type PaintPrior, usualPaint, whitePaint } from './fit-equations.ts';
import { addPatch, settleAmounts } from './joint-equations.ts';
import {
  emptyLook,
  type JointPatch,
  type PatchOptics,
  paintSize,
  patchTarget,
} from './joint-patch.ts';

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

/** A paint that is found: where it starts, what is expected of it, and where its unknowns stand. */
interface FreePaint {
  readonly start: Float64Array;
  readonly prior: PaintPrior;
  /** Logarithms that count as smooth over wavelength: 0 for a paint of which nothing is known. */
  readonly shape: Float64Array;
  readonly first: number;
}

/** Reflectance at 550 nm: over a dark ground nothing is learned of absorption. */
const lightGround = 0.3;
const midSample = 17;
/** The lightness the table's pale wash is counted by, and its paper, as seen (see pigment-optics.json). */
const paleWash = 0.4;
const palePaper = 0.87;

/** The smoothest spectrum of a colour, or where no surface has it a grey of its lightness. */
function spectrumNear(lab: Lab): Float64Array {
  try {
    return spectrumFromLab(lab);
  } catch (thrown) {
    if (!(thrown instanceof RangeError)) throw thrown;
    return spectrumFromLab([Math.min(99, Math.max(1, lab[0])), 0, 0]);
  }
}

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
  const seen = reflectance ?? spectrumNear(lab);
  const depths = Float64Array.from(ground, (under, i) =>
    Math.max(0.002, Math.log(under / Math.max(0.004, inside(seen[i], surface))) / 2),
  );
  const logK = depths.map((depth) => Math.log(depth / amount));
  const paleDepth = Math.log(inside(palePaper, surface) / inside(paleWash, surface));
  const deepest = 2 * Math.max(...depths.subarray(2, 33)); // 400..700 nm
  return white ? whitePaint(logK) : usualPaint(logK, Math.log(deepest / paleDepth / amount));
}

/** Neighbouring samples say nearly the same: 36 count as two, as in the usual prior. */
const holdAlike = (doubt: number): Float64Array =>
  new Float64Array(paintSize).fill(2 / spectrumSize / doubt ** 2);

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
      const start = logsOf(paint.spectra);
      const prior = { centre: start, hold: holdAlike(paint.doubt) };
      return { start, prior, shape: start, first: place };
    }
    const prior = priorFromPatches(patches, n, paint.white, optics);
    return { start: prior.centre, prior, shape: new Float64Array(paintSize), first: place };
  });
}

/** The prior's part of the equations of one paint, 72 unknowns: those of a fit without patches. */
function priorEquations({ prior, shape, first }: FreePaint, place: Float64Array): NormalEquations {
  const off = (values: Float64Array): Float64Array => values.map((value, i) => value - shape[i]);
  const logs = [off(place.subarray(first, first + paintSize))];
  const centred = { centre: off(prior.centre), hold: prior.hold };
  return fitEquations([], { logs, drifts: [] }, 0, [], centred, 1, 1);
}

/** The sum of squares over all free paints, and what the fit comes to at a place. */
export function jointSquares(
  patches: readonly JointPatch[],
  paints: readonly JointPaint[],
  optics: PatchOptics,
) {
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
  for (const paint of sought) start.set(paint.start, paint.first);

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
    let cost = sought.reduce((sum, paint) => sum + priorEquations(paint, place).cost, 0);
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
    for (const paint of sought) {
      const prior = priorEquations(paint, place);
      cost += prior.cost;
      for (let i = 0; i < paintSize; i++) {
        const line = (paint.first + i) * size + paint.first;
        matrix.set(prior.matrix.subarray(i * paintSize, (i + 1) * paintSize), line);
        right[paint.first + i] = prior.right[i];
      }
    }
    for (const [n, target] of targets.entries()) {
      settleAmounts(target, mixed, optics, look);
      cost += look.cost;
      addPatch({ matrix, right, cost }, target, firsts[n], look);
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
  return { start, costAt, equationsAt, looksAt };
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
export async function fitJointly(
  patches: readonly JointPatch[],
  paints: readonly JointPaint[],
  optics: PatchOptics,
  checkpoint: Pause,
): Promise<JointFit> {
  const squares = jointSquares(patches, paints, optics);
  const problem = { ...squares, longestStep, tolerance, mostRounds };
  const { place, cost, rounds, converged } = await minimiseSquares(
    squares.start,
    problem,
    checkpoint,
  );
  const found = squares.looksAt(place);
  return {
    paints: found.paints,
    expected: found.looks.map(({ lab }) => lab),
    drifts: found.looks.map(({ drift }) => drift),
    cost,
    rounds,
    converged,
  };
}
