import type { Lab } from '../../colour/lab.ts';
import { labOfReflectance, spectrumSize } from '../../colour/spectrum.ts';
import { drySurface, outside } from '../../colour/surface.ts';
import { bisect } from '../../numeric/solve.ts';
import { defaultPaper } from '../colour-of-washes.ts';
import { layOver, type PaintSpectra, paintLayer } from '../layer.ts';
import { hueGroup } from '../list-paints.ts';
import { type Paint, type PaintCard, strengthOf, usualCoat } from '../paint.ts';
import { paintBox } from '../paint-box.ts';
import type { OtherHue } from './paint-measure.ts';
import { depthOf, isWhite, type PaintMeasure } from './paint-measure.ts';

const sheetOf = ({ K, S }: PaintSpectra, amount: number): Float64Array =>
  layOver(paintLayer(K, S, amount), defaultPaper, new Float64Array(spectrumSize));

const washOf = (spectra: PaintSpectra, amount: number): Lab =>
  labOfReflectance(sheetOf(spectra, amount));

/** The optics table's level of a pale wash, surface included. */
const paleReflectance = 0.4;
/** Of a spectrum: 400 to 700 nm ... */
const firstSample = 2;
const lastSample = 32;
/** ... and 550 nm, at whose S the table counts whites. */
const greenSample = 17;
const endless = 1e6;

/** The amount up to which a condition holds that holds of the thinnest washes. */
function amountUpTo(condition: (amount: number) => boolean): number {
  const end = Math.log(endless);
  const [thin, thick] = bisect(
    (log) => condition(Math.exp(log)),
    -end,
    end,
    () => 0,
  );
  return Math.exp((thin + thick) / 2);
}

/**
 * How many units of amount are load 1 as the optics table has it (data/pigment-optics.json): lowest
 * reflectance 400..700 nm on the default paper 0.40; for a white, which never gets there, S at 550
 * nm 1.
 */
export function paleWashAmount(spectra: PaintSpectra): number {
  const isTooPale = (amount: number): boolean => {
    const least = Math.min(...sheetOf(spectra, amount).subarray(firstSample, lastSample + 1));
    return outside(least, drySurface) > paleReflectance;
  };
  if (isTooPale(endless)) return 1 / Math.max(1e-9, spectra.S[greenSample]);
  return amountUpTo(isTooPale);
}

/** Load of a wash that is neither pale nor full. */
const middleLoad = 4;

/** Under this C* a wash has no hue to be wrong in (own). */
const leastChroma = 15;
/** Makers' tubes of one pigment differ in hue by less than this, degrees (own). */
const otherHue = 40;

/** Degrees between the hues of two washes; 0 where one of them is greyish. */
function hueBetween(one: Lab, other: Lab): number {
  if (Math.min(Math.hypot(one[1], one[2]), Math.hypot(other[1], other[2])) < leastChroma) return 0;
  const turn = Math.atan2(one[2], one[1]) - Math.atan2(other[2], other[1]);
  return (Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) * 180) / Math.PI;
}

const distance = (one: Lab, other: Lab): number =>
  Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]);

/** 'Hue' in the name of a paint says that it stands in for another (ASTM D4302): no namesake of its pigment. */
const standsIn = ({ name }: Paint): boolean => / hue$/.test(name);

const sameNames = (one: readonly string[], other: readonly string[]): boolean =>
  one.length === other.length && one.every((name) => other.includes(name));

/** What a photo can't tell of a tube. */
interface Tube extends Pick<PaintMeasure, 'strength' | 'mostLoad' | 'question'> {
  /** How many units of amount are a load. */
  readonly perLoad: number;
}

/**
 * Load, strength and masstone of a paint by the built-in one it is measured as, or that of the same pigment that looks
 * most like it; and a question to her where its hue is quite another one. The table counts its pale wash by the darkest wavelength, and
 * which that is colours alone do not tell: so a load is what makes a wash as deep as the namesake's. K and S per unit
 * of amount.
 */
export function tubeOf(spectra: PaintSpectra, { id, ci }: Pick<PaintCard, 'id' | 'ci'>): Tube {
  const perLoad = paleWashAmount(spectra);
  const same = paintBox.filter(
    (paint) => ci.length > 0 && sameNames(paint.ci, ci) && !standsIn(paint),
  );
  const itself = paintBox.filter((paint) => paint.id === id);
  const alike = (itself.length > 0 ? itself : same)
    .map((paint) => {
      const depth = depthOf(washOf(paint, 1));
      const asDeep = isWhite(ci)
        ? perLoad
        : amountUpTo((amount) => depthOf(washOf(spectra, amount)) < depth);
      const [hers, usual] = [washOf(spectra, middleLoad * asDeep), washOf(paint, middleLoad)];
      return { paint, perLoad: asDeep, hers, usual };
    })
    .sort((one, other) => distance(one.hers, one.usual) - distance(other.hers, other.usual));
  const [nearest] = alike;
  if (!nearest) return { perLoad, strength: 1, mostLoad: usualCoat, question: null };
  const { paint, hers, usual } = nearest;
  const strength = strengthOf(paint);
  const isOther = hueBetween(hers, usual) > otherHue;
  return {
    perLoad: isOther ? perLoad : nearest.perLoad,
    strength,
    mostLoad: usualCoat * strength,
    question: isOther ? questionOf(paint, hers, usual) : null,
  };
}

function questionOf({ name, ci }: Paint, hers: Lab, usual: Lab): OtherHue {
  const [looks, is] = [hers, usual].map((lab) => hueGroup({ ladder: [lab], ci: [] }));
  return { called: [name, ...ci], looks, is };
}
