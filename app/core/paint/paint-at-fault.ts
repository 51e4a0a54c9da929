import type { Lab } from '../colour/lab.ts';
import { drySurface, type Surface } from '../colour/surface.ts';
import { colourOfWashes } from './colour-of-washes.ts';
import type { LaidMix } from './mix.ts';
import { directionOf } from './mix-neighbours.ts';
import type { Paint } from './paint.ts';
import { correctedPaint, type StrengthCorrection, strengthStep } from './strength-corrections.ts';

/** What is too much in the colour of a dry scrap. */
export type ScrapHue = 'red' | 'yellow' | 'green' | 'blue' | 'dull';

/** Of a puddle on a scrap, dry, against its swatch. */
export interface ScrapVerdict {
  readonly depth: 'weaker' | 'right' | 'stronger' | null;
  readonly hue: ScrapHue | null;
}

/** The paint whose strength explains a verdict best. */
export interface PaintAtFault {
  readonly paint: string;
  readonly seems: 'stronger' | 'weaker';
}

/** What a mix dries to on a bare scrap, and what is at fault; null where no paint is. */
export interface ScrapLook {
  readonly dry: Lab;
  readonly fault: PaintAtFault | null;
}

/** A shift in a*, b* shorter than this explains nothing, nor one that is more than 60 degrees off (own). */
const leastShift = 0.5;
const leastCosine = 0.5;

/**
 * Which paint of a mix is at fault for its hue on a bare scrap: the one that goes furthest the way she says when its
 * strength changes by one step. Of the paint she sees too much of there is more than reckoned; only where the scrap
 * is too pale as well is there less of another. A correction made before is taken back first. Nobody can tell by the
 * hue alone: a blue that is stronger looks like a yellow that is weaker. Depth without hue is the water's: null.
 */
function paintAtFault(
  { parts, load }: LaidMix,
  paints: readonly Paint[],
  { depth, hue }: ScrapVerdict,
  made: readonly StrengthCorrection[],
  surface: Surface,
): PaintAtFault | null {
  if (hue === null || parts.length < 2) return null;
  const mixed = parts.flatMap(({ paint }) => paints.find(({ id }) => id === paint) ?? []);
  const colour = (own: readonly Paint[]): Lab =>
    colourOfWashes([{ paints: own, parts: parts.map((part) => part.parts), load }], surface);
  const planned = colour(mixed);
  const direction = directionOf(hue === 'dull' ? 'duller' : `more ${hue}`, planned);
  if (!direction) return null;
  const factorOf = ({ id }: Paint): number => made.find(({ paint }) => paint === id)?.factor ?? 1;

  const explains = (paint: Paint, seems: PaintAtFault['seems']): number => {
    const factor = seems === 'stronger' ? strengthStep : 1 / strengthStep;
    const dry = colour(mixed.map((each) => correctedPaint(each, [{ paint: paint.id, factor }])));
    const [da, db] = [dry[1] - planned[1], dry[2] - planned[2]];
    const along = da * direction[0] + db * direction[1];
    return along >= leastShift && along >= leastCosine * Math.hypot(da, db) ? along : 0;
  };
  const best = (among: readonly Paint[], seems: PaintAtFault['seems']): PaintAtFault | null => {
    let found: PaintAtFault | null = null;
    let most = 0;
    for (const paint of among) {
      const along = explains(paint, seems);
      if (along > most) found = { paint: paint.id, seems };
      most = Math.max(most, along);
    }
    return found;
  };
  const raised = mixed.filter((paint) => factorOf(paint) > 1);
  const lowered = mixed.filter((paint) => factorOf(paint) < 1);
  if (depth === 'weaker') return best(raised, 'weaker') ?? best(mixed, 'weaker');
  const back = best(lowered, 'stronger') ?? (depth === null ? best(raised, 'weaker') : null);
  return back ?? best(mixed, 'stronger');
}

/**
 * A mix on a bare scrap, and what is at fault for her verdict, if she gave one. `paints` are those of the plan it
 * was mixed by; `made` are the corrections so far.
 */
export function lookAtScrap(
  paints: readonly Paint[],
  mix: LaidMix,
  verdict: ScrapVerdict | null,
  made: readonly StrengthCorrection[],
  surface: Surface = drySurface,
): ScrapLook {
  const laid = mix.parts.flatMap(({ paint, parts }) =>
    paints.filter(({ id }) => id === paint).map((each) => ({ each, parts })),
  );
  const dry = colourOfWashes(
    [
      {
        paints: laid.map(({ each }) => each),
        parts: laid.map(({ parts }) => parts),
        load: mix.load,
      },
    ],
    surface,
  );
  return { dry, fault: verdict && paintAtFault(mix, paints, verdict, made, surface) };
}
