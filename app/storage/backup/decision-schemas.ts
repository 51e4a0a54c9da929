import * as v from 'valibot';
import { mendings } from '../../core/compare/comparison.ts';
import type { Decision } from '../../core/decisions/painting.ts';
import { type PlanEdit, passagesChoices } from '../../core/decisions/plan-edit.ts';
import { edgeWishes } from '../../core/reading/edges/edge.ts';
import { whiteWays } from '../../core/reading/whites/whites.ts';
import type { EventBody } from '../../core/session/session-event.ts';
import { troubles } from '../../core/session/trouble.ts';

/** A figure that is one. */
export const figure = v.pipe(v.number(), v.finite());
/** A whole number from nought up. */
export const whole = v.pipe(v.number(), v.integer(), v.minValue(0));
/** A name the app gave: of a painting, a paint, a step. */
export const id = v.pipe(v.string(), v.minLength(1), v.maxLength(400));
/** Words of hers or ours. */
export const text = v.pipe(v.string(), v.maxLength(100_000));
export const listOf = <T extends v.GenericSchema>(item: T, most = 10_000) =>
  v.pipe(v.array(item), v.maxLength(most));
export const range = v.strictTuple([figure, figure]);

const place = v.strictTuple([figure, figure]);
const lab = v.strictTuple([figure, figure, figure]);
const stroke = { stroke: listOf(place, 50_000), brush: figure };
export const parts = listOf(v.looseObject({ paint: id, parts: figure }), 12);
const amounts = { parts, load: figure, unit: v.optional(v.literal('ml')) };
const nullable = v.nullable;

const rowsByKind = <K extends string>(kinds: Readonly<Record<K, v.ObjectEntries>>, more = {}) =>
  v.variant(
    'kind',
    Object.entries<v.ObjectEntries>(kinds).map(([kind, entries]) =>
      v.looseObject({ ...more, ...entries, kind: v.literal(kind) }),
    ),
  );

const techniques = [
  ...(['wet on dry', 'wet-in-wet', 'glaze', 'dry brush', 'negative painting', 'scraping'] as const),
  ...(['lifting', 'splatter', 'masking', 'opaque white', 'none'] as const),
];

const planEdits: Readonly<Record<PlanEdit['kind'], v.ObjectEntries>> = {
  skip: { key: id, skipped: v.boolean() },
  add: {
    id,
    what: v.picklist(['wash', 'dry', 'lift', 'splatter', 'accents']),
    mix: nullable(id),
    after: nullable(id),
  },
  move: { key: id, after: nullable(id) },
  split: { key: id },
  merge: { key: id },
  technique: { key: id, technique: v.picklist(techniques) },
  mix: { mix: id, ...amounts },
};

const colourWish = v.variant('mode', [
  v.looseObject({ mode: v.literal('photo') }),
  v.looseObject({ mode: v.literal('one'), paint: id }),
  v.looseObject({
    mode: v.literal('own'),
    hues: listOf(v.looseObject({ family: place, paint: id }), 100),
  }),
]);

const familyEdit = v.union([
  v.looseObject({ join: v.union([v.literal('all'), v.strictTuple([place, place])]) }),
  v.looseObject({ part: place }),
]);

/** A kind that is missing here does not compile. */
const decisions: Readonly<Record<Decision['kind'], v.ObjectEntries>> = {
  bands: { count: figure },
  limits: { lightness: listOf(figure, 20) },
  range: { mode: v.picklist(['photographed', 'opened']) },
  palette: {
    n: figure,
    must: listOf(id, 500),
    exclude: listOf(id, 500),
    chosen: v.optional(listOf(id, 100)),
  },
  subject: { mode: v.picklist(['circle', 'add', 'take']), ...stroke },
  white: { mode: v.picklist(['keep', 'paint']), ...stroke },
  'white-way': { place: nullable(place), way: nullable(v.picklist(whiteWays)) },
  edge: { place, wish: nullable(v.picklist(edgeWishes)), whole: v.optional(v.literal(true)) },
  focus: { place: nullable(place) },
  colours: { wish: colourWish },
  families: { edit: nullable(familyEdit) },
  smallest: {
    sizes: nullable(v.looseObject({ firstWash: figure, second: figure, darks: figure })),
  },
  alter: { change: v.picklist(['leave-out', 'lighter', 'darker']), ...stroke },
  ground: { plain: v.boolean() },
  evening: { minutes: nullable(figure) },
  washes: { count: nullable(figure) },
  passages: { order: nullable(v.picklist(passagesChoices)) },
  'plan-edit': { edit: nullable(rowsByKind(planEdits)) },
  undo: {},
};

export const decision = rowsByKind(decisions, { id, at: figure, undoes: v.optional(id) });

const paper = v.looseObject({ gsm: figure, fibre: v.picklist(['cotton', 'cellulose']) });
const weather = v.looseObject({
  celsius: figure,
  humidity: figure,
  airSpeed: figure,
  sunWatts: v.optional(figure),
  backing: v.optional(v.picklist(['board', 'block', 'wet'])),
  hairDryer: v.optional(v.boolean()),
});

const atStep = { key: id };

/** A kind that is missing here does not compile. */
const events: Readonly<Record<EventBody['kind'], v.ObjectEntries>> = {
  started: {},
  'step-begun': { ...atStep, aside: v.optional(v.boolean()) },
  'stroke-down': atStep,
  'painting-done': atStep,
  'still-wet': atStep,
  'shine-gone': atStep,
  'dry-now': atStep,
  'step-done': atStep,
  back: atStep,
  paused: {},
  resumed: {},
  'clock-moved': { byMs: figure },
  note: { text },
  photo: { photoId: id, ...atStep },
  compared: {
    ...{ photoId: id, ...atStep, engine: id, within4: figure, whitesLost: whole },
    wetness: v.picklist(['satin', 'dry']),
    corners: v.strictTuple([place, place, place, place]),
    bare: listOf(place, 1000),
    bands: listOf(v.looseObject({ band: whole, difference: figure }), 100),
    slots: listOf(v.looseObject({ slot: whole, share: figure, difference: figure }), 2000),
    advice: listOf(
      v.looseObject({ mending: v.picklist(mendings), slot: whole, at: place, difference: figure }),
      100,
    ),
  },
  weather: { weather },
  paper: { paper },
  trouble: { ...atStep, trouble: v.picklist(troubles), wetness: id },
  practise: {
    ...atStep,
    doing: v.picklist(['begun', 'brush-down', 'shine-gone', 'ended']),
  },
  'pace-forgotten': { clock: v.picklist(['shine', 'dry']), paper, wash: id },
  'mix-changed': { mix: id, ...amounts },
  scrap: {
    parts,
    load: figure,
    verdict: nullable(v.picklist(['weaker', 'right', 'stronger'])),
    hue: v.optional(v.picklist(['red', 'yellow', 'green', 'blue', 'dull'])),
  },
  mended: {
    ...{ photoId: id, after: id, before: nullable(id), mending: v.picklist(mendings) },
    ...{ slot: whole, at: place, measured: lab, expected: lab, predicted: lab },
    ...{ parts, load: figure, consistency: nullable(id), rows: listOf(whole, 100_000) },
  },
  'taken-back': { events: listOf(id, 1000) },
  finished: {},
};

export const eventBody = rowsByKind(events);
