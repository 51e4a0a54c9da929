import { colourDifference } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import { type Place, placeOf } from '../../raster/size.ts';
import type { Detail } from '../../reading/details/detail.ts';
import type { ToneRange } from '../../reading/reading.ts';
import { onTheSheet } from '../../reading/tone-range.ts';
import type { Mix, Step } from '../plan.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { dryKeyOf, markMinutes } from '../steps/step-draft.ts';
import type { Mark } from './mark.ts';

/** Opaque white over dry paint: nearly paper, a little cool (own). */
const opaqueWhite: Lab = [92, -0.5, -1];
/** A light is set back in white from this lightness on (own) ... */
const sparkleLightness = 78;
/** ... where white comes nearer to it than what is painted there by this, CIEDE2000: others would glare (own). */
const leastSparkleGain = 4;
/** And so many of them (own). */
const mostSparkles = 12;

/** What the washes are to be where a shape lies. */
function paintedAt({ rows, shares }: Detail, colours: readonly number[], range: ToneRange): Lab {
  const mean = (c: number): number =>
    rows.reduce((sum, row, n) => sum + shares[n] * colours[3 * row + c], 0);
  return [onTheSheet(range, mean(0)), mean(1), mean(2)];
}

/** The small lights that are set back in opaque white at the end, by their place in the reading's list. */
export function sparklesOf({ reading }: Pick<PlanFacts, 'reading'>, range = reading.range): Mark[] {
  const { details, squares } = reading;
  if (!details || !squares) return [];
  return details.shapes
    .flatMap((detail, shape): Mark[] => {
      const { isLight, lab } = detail;
      const wanted: Lab = [onTheSheet(range, lab[0]), lab[1], lab[2]];
      if (!isLight || wanted[0] < sparkleLightness) return [];
      const painted = paintedAt(detail, squares.colours, range);
      const gain = colourDifference(painted, wanted) - colourDifference(opaqueWhite, wanted);
      return gain >= leastSparkleGain ? [{ kind: 'sparkle', shape, lab: opaqueWhite }] : [];
    })
    .slice(0, mostSparkles);
}

/** The slots some marks lie in, each once. */
export function slotsOfMarks(
  { reading: { details, squares } }: Pick<PlanFacts, 'reading'>,
  marks: readonly Mark[],
): number[] {
  const rows = marks.flatMap(({ shape }) => details?.shapes[shape]?.rows ?? []);
  return [...new Set(rows.flatMap((row) => squares?.slots[row] ?? []))].sort((x, y) => x - y);
}

/** The third of the sheet most of some shapes lie in. */
function mostlyAt(shapes: readonly Detail[]): Place {
  const counts = new Map<Place, number>();
  for (const { at } of shapes) {
    const place = placeOf(at);
    counts.set(place, (counts.get(place) ?? 0) + 1);
  }
  return [...counts].reduce((most, one) => (one[1] > most[1] ? one : most))[0];
}

/** What a step of this kind sets. */
export const markOfStep: Partial<Record<Step['kind'], Mark['kind']>> = {
  details: 'detail',
  accents: 'accent',
  'last-lights': 'sparkle',
};

/** The marks a step sets, of those on the sheet after it. */
export const ownMarks = ({ kind, marks = [] }: Pick<Step, 'kind' | 'marks'>): Mark[] =>
  marks.filter((mark) => mark.kind === markOfStep[kind]);

/** A step that sets some marks; its mixes and minutes are those of the marks. */
function stepWithMarks(
  step: Step,
  own: readonly Mark[],
  shapes: readonly Detail[],
  mixes: readonly Mix[],
  facts: Pick<PlanFacts, 'reading'>,
): Step {
  const used = mixes.filter(({ id }) => own.some(({ mix }) => mix === id));
  const puddles = [...new Set(used.flatMap(({ puddle }) => puddle ?? []))].sort();
  const prompt = {
    say: step.kind === 'details' ? 'details/set' : 'accents/set',
    count: own.length,
    place: mostlyAt(own.map(({ shape }) => shapes[shape])),
    puddles,
  } as const;
  return {
    ...step,
    ...(own[0].kind !== 'sparkle' && {
      prompt,
      slots: slotsOfMarks(facts, own),
      mixes: used.map(({ id }) => id),
      paintMinutes: markMinutes(facts, own.length),
    }),
  };
}

/**
 * The steps with their marks: every step says which lie on the sheet after it. A step for details that found none goes,
 * and the wait after it.
 */
export function placeMarks(
  steps: readonly Step[],
  marks: readonly Mark[],
  mixes: readonly Mix[],
  facts: Pick<PlanFacts, 'reading'>,
): Step[] {
  const shapes = facts.reading.details?.shapes ?? [];
  const empty = steps.filter(
    ({ kind }) => kind === 'details' && !marks.some((mark) => mark.kind === 'detail'),
  );
  const gone = new Set(empty.flatMap(({ key }) => [key, dryKeyOf(key)]));
  let lying: readonly Mark[] = [];
  return steps
    .filter(({ key }) => !gone.has(key))
    .map((step, i): Step => {
      const kind = markOfStep[step.kind];
      const own = marks.filter((mark) => mark.kind === kind && !lying.includes(mark));
      if (own.length > 0) lying = [...lying, ...own];
      const told = own.length > 0 ? stepWithMarks(step, own, shapes, mixes, facts) : step;
      return { ...told, n: i + 1, ...(lying.length > 0 && { marks: lying }) };
    });
}
