import { colourDifference } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import { labOfReflectance, spectrumSize } from '../../colour/spectrum.ts';
import { lightnessOfOneValue } from '../../limits.ts';
import { defaultPaper } from '../../paint/colour-of-washes.ts';
import { butterFrom } from '../../paint/consistency.ts';
import type { MixSpectra } from '../../paint/layer.ts';
import type { Detail } from '../../reading/details/detail.ts';
import type { ToneRange } from '../../reading/reading.ts';
import { onTheSheet } from '../../reading/tone-range.ts';
import type { Mix } from '../plan.ts';
import { SquareSolver, type Underneath, writeLayers } from '../runs/solve-square.ts';
import { mostAccentPuddles } from '../steps/finishing-steps.ts';
import type { Mark } from './mark.ts';

// All figures: own, but that accents are few (common practice, no source).
/** A mark is worth setting from this gain on, CIEDE2000. */
const leastGain = 2.5;
const mostDetails = 48;
/** A touch that brings so much more colour than its place is to have, CIE C* for an L* of darkness, is a speck. */
const speckFrom = 0.5;
/** So many of the puddles on the palette are taken up for details. */
const mostPuddles = 3;
/** An accent is darker than what it is set on by this, L*, ... */
const accentContrast = 8;
/** ... no larger than this, mm2, ... */
const accentMm2 = 60;
/** ... and there are so many: one for some shapes that could be. */
const [fewestAccents, mostAccents] = [3, 7] as const;
const shapesAnAccent = 5;
/** At the centre of interest an accent may be so much lighter than one far off, L*. */
const nearerBy = 20;

/** A puddle that is on the palette anyway. */
interface Puddle {
  readonly mix: string;
  readonly spectra: MixSpectra;
  readonly most: number;
  /** L* of so much of it on paper. */
  readonly darkest: number;
}

/** The puddles of some mixes, each once: the last mix of a puddle stands for it. */
function puddlesOf(mixes: readonly Mix[], spectraOf: (mix: Mix) => MixSpectra): readonly Puddle[] {
  const byName = new Map<string, Puddle>();
  for (const mix of mixes) {
    if (mix.parts.length === 0 || mix.puddle === null) continue;
    const spectra = spectraOf(mix);
    const most = Math.min(spectra.coat, butterFrom);
    const sheet = new Float64Array(spectrumSize);
    writeLayers([spectra], most, 0, defaultPaper, sheet);
    const [darkest] = labOfReflectance(sheet);
    byName.set(mix.puddle, { mix: mix.id, spectra, most, darkest });
  }
  return [...byName.values()];
}

/** The darkest puddles, within a value of each other, two at most: a few touches need no more. */
function darkPuddles(puddles: readonly Puddle[]): readonly number[] {
  const byDarkness = [...puddles.keys()].sort((m, n) => puddles[m].darkest - puddles[n].darkest);
  const limit = puddles[byDarkness[0]].darkest + lightnessOfOneValue;
  return byDarkness.filter((n) => puddles[n].darkest <= limit).slice(0, mostAccentPuddles);
}

/** What a puddle makes of a shape at best. */
interface Touch {
  readonly load: number;
  readonly lab: Lab;
  /** By how much the shape comes nearer to the photo, CIEDE2000. */
  readonly gain: number;
}

interface Judged {
  readonly shape: number;
  readonly detail: Detail;
  /** Colour it is to have on the sheet, and has without it. */
  readonly wanted: Lab;
  readonly now: Lab;
  /** By puddle. */
  readonly touches: readonly Touch[];
}

/** The puddles that bring most together, up to so many: each time the one that adds most. */
function choosePuddles(judged: readonly Judged[], count: number): readonly number[] {
  const chosen: number[] = [];
  const bestOf = ({ touches }: Judged, puddles: readonly number[]): number =>
    puddles.reduce((best, n) => Math.max(best, touches[n].gain), 0);
  const all = Array.from({ length: count }, (_, n) => n);
  while (chosen.length < Math.min(mostPuddles, count)) {
    const value = (n: number): number =>
      judged.reduce((sum, one) => sum + worth(one, bestOf(one, [...chosen, n])), 0);
    const rest = all.filter((n) => !chosen.includes(n));
    chosen.push(rest.reduce((best, n) => (value(n) > value(best) ? n : best)));
  }
  return chosen;
}

const worth = ({ detail }: Judged, gain: number): number =>
  gain < leastGain ? 0 : gain * detail.areaMm2 * detail.near;

const chroma = ([, a, b]: Lab): number => Math.hypot(a, b);

/** What of the darkest shapes is taken first: near the centre of interest some L* count for less. */
const darkness = ({ wanted, detail }: Judged): number => nearerBy * detail.near - wanted[0];

/** What the washes leave to the point of the brush. */
export interface MarkInput {
  readonly shapes: readonly Detail[];
  /** What lies under a shape after the washes. */
  readonly underneathOf: (detail: Detail) => Underneath;
  readonly mixes: readonly Mix[];
  readonly spectraOf: (mix: Mix) => MixSpectra;
  readonly range: ToneRange;
}

/**
 * The details and accents to set after the washes: which small shapes, from which puddles, how strong, and the colour
 * they dry to. Accents are the few darkest. Deterministic.
 */
export function chooseMarks({ shapes, underneathOf, mixes, spectraOf, range }: MarkInput): Mark[] {
  const puddles = puddlesOf(mixes, spectraOf);
  if (puddles.length === 0) return [];
  const solver = new SquareSolver();
  const out = new Float64Array(3);
  const judged = shapes.flatMap((detail, shape): Judged[] => {
    if (detail.isLight) return [];
    const underneath = underneathOf(detail);
    const wanted: Lab = [onTheSheet(range, detail.lab[0]), detail.lab[1], detail.lab[2]];
    const colour = (spectra: MixSpectra, load: number): Lab => {
      solver.writeColour([spectra], load, 0, underneath.reflectance, out);
      return [out[0], out[1], out[2]];
    };
    const now = colour(puddles[0].spectra, 0);
    const missed = colourDifference(now, wanted);
    const touches = puddles.map(({ spectra, most }): Touch => {
      solver.amounts[0] = most / 3;
      solver.solve([spectra], underneath, wanted, most);
      const load = solver.amounts[0];
      const lab = colour(spectra, load);
      const tooColourful = chroma(lab) - Math.max(chroma(wanted), chroma(now));
      const isSpeck = tooColourful > speckFrom * (now[0] - lab[0]);
      return { load, lab, gain: isSpeck ? 0 : missed - colourDifference(lab, wanted) };
    });
    return [{ shape, detail, wanted, now, touches }];
  });
  const markOf = (kind: Mark['kind'], { shape, touches }: Judged, n: number): Mark => {
    const { load, lab } = touches[n];
    return { kind, shape, mix: puddles[n].mix, load: Number(load.toPrecision(3)), lab };
  };
  const darks = darkPuddles(puddles);
  const bestOf = ({ touches }: Judged, among: readonly number[]): number =>
    among.reduce((best, n) => (touches[n].gain > touches[best].gain ? n : best));

  const mayAccent = judged.filter((one) => {
    const { gain, lab } = one.touches[bestOf(one, darks)];
    return (
      gain >= leastGain && one.now[0] - lab[0] >= accentContrast && one.detail.areaMm2 <= accentMm2
    );
  });
  const accentCount = Math.min(
    mostAccents,
    Math.max(fewestAccents, Math.floor(mayAccent.length / shapesAnAccent)),
  );
  const accents = mayAccent
    .toSorted((one, two) => darkness(two) - darkness(one) || one.shape - two.shape)
    .slice(0, accentCount);
  const rest = judged.filter((one) => !accents.includes(one));
  const chosen = choosePuddles(rest, puddles.length);
  const details = rest
    .map((one) => {
      const n = bestOf(one, chosen);
      return { one, n, value: worth(one, one.touches[n].gain) };
    })
    .filter(({ value }) => value > 0)
    .sort((one, two) => two.value - one.value)
    .slice(0, mostDetails);
  return [
    ...details.map(({ one, n }) => markOf('detail', one, n)),
    ...accents.map((one) => markOf('accent', one, bestOf(one, darks))),
  ];
}
