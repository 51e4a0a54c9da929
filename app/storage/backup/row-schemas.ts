import * as v from 'valibot';
import type { Painting } from '../../core/decisions/painting.ts';
import { largestOptic } from '../../core/limits.ts';
import type { OwnBox } from '../../core/paint/own-box.ts';
import { largestSheetMm } from '../../core/reference/sheet.ts';
import type { SessionEvent } from '../../core/session/session-event.ts';
import { canBeSaid, type Said } from '../../core/words/plan/words.ts';
import { bandsWhyInWords, warningInWords } from '../../core/words/reading/warnings.ts';
import { whiteWhyInWords } from '../../core/words/reading/whites.ts';
import type { PlanRow, ReadingRow } from '../schema.ts';
import {
  decision,
  eventBody,
  figure,
  id,
  listOf,
  parts,
  range,
  text,
  whole,
} from './decision-schemas.ts';

/** Part of the address of its screens. */
const paintingId = v.pipe(id, v.regex(/^[^/#?]+$/));
const isTrue = <T>(schema: v.GenericSchema): v.GenericSchema<unknown, T> =>
  schema as v.GenericSchema<unknown, T>;

const lab = v.strictTuple([figure, figure, figure]);
const sideMm = v.pipe(figure, v.minValue(1), v.maxValue(2 * largestSheetMm));
const pair = v.strictTuple([figure, figure]);

const painting = v.looseObject({
  schema: v.literal(1),
  id: paintingId,
  title: text,
  createdAt: figure,
  updatedAt: figure,
  reference: v.looseObject({
    photoId: id,
    crop: v.looseObject({ centre: pair, size: pair, turn: figure }),
    sheet: v.looseObject({ format: id, widthMm: sideMm, heightMm: sideMm }),
  }),
  decisions: listOf(decision, 20_000),
  planIds: listOf(id),
  sessionIds: listOf(id),
  purpose: v.optional(v.picklist(['study', 'candidate'])),
  studyOf: v.optional(id),
  handedOn: v.optional(v.looseObject({ planId: id, decisions: whole })),
});

const buffer = v.instance(ArrayBuffer);
const event = v.looseObject({
  id,
  sessionId: id,
  seq: whole,
  planId: v.string(),
  wallMs: figure,
  monoMs: figure,
  bootId: id,
  what: eventBody,
});

/** One photo of a painting: `file` names where its bytes are. */
const photo = v.strictObject({
  id,
  mime: v.pipe(v.string(), v.regex(/^image\/[a-z0-9.+-]{1,40}$/)),
  /** Of the photo as it came in, before the tags of its place were taken out. */
  sha256: v.pipe(v.string(), v.maxLength(64)),
  name: v.pipe(v.string(), v.maxLength(1000)),
  file: v.pipe(v.string(), v.maxLength(60)),
});

/** What a painting's own file holds; plans, readings and photos have files of their own. */
export interface PaintingFile {
  readonly painting: Painting;
  readonly thumbnail: ArrayBuffer | null;
  readonly photos: readonly v.InferOutput<typeof photo>[];
  readonly sessions: readonly { readonly id: string; readonly planId: string }[];
  readonly events: readonly SessionEvent[];
  /** Notes being typed at the easel. */
  readonly notes: readonly { readonly sessionId: string; readonly text: string }[];
  /** The photo kept last in a session, which may wait for its line. */
  readonly lastPhotos: readonly {
    readonly sessionId: string;
    readonly photoId: string;
    readonly key: string;
  }[];
}

export const paintingFile = isTrue<PaintingFile>(
  v.strictObject({
    painting,
    thumbnail: v.nullable(buffer),
    photos: listOf(photo),
    sessions: listOf(v.strictObject({ id, planId: v.string() })),
    events: listOf(event, 200_000),
    notes: listOf(v.strictObject({ sessionId: id, text })),
    lastPhotos: listOf(v.strictObject({ sessionId: id, photoId: id, key: text })),
  }),
);

const optic = v.pipe(figure, v.minValue(0), v.maxValue(largestOptic));
const spectrum = v.pipe(v.array(optic), v.length(36));
const positive = v.pipe(optic, v.gtValue(0));
const paint = v.looseObject({
  id,
  revision: whole,
  name: text,
  ci: listOf(text, 50),
  K: spectrum,
  S: spectrum,
  strength: v.optional(positive),
  corrected: v.optional(positive),
  mostLoad: v.optional(positive),
  properties: v.looseObject({
    transparency: v.nullable(v.picklist(['T', 'ST', 'SO', 'O'])),
    staining: v.nullable(figure),
    granulation: v.nullable(figure),
    lightfastness: v.nullable(text),
    caution: v.nullable(text),
  }),
});

const slot = v.looseObject({
  passage: id,
  band: figure,
  family: figure,
  share: figure,
  lab,
  target: lab,
  reserve: v.boolean(),
});
const slots = listOf(slot, 256);
const tones = v.looseObject({ mode: id, lo: figure, hi: figure, dark: figure, paper: figure });
/** What can be put into words, whatever it is made of: a sentence is all that is ever made of it. */
const toldBy = <T>(inWords: (told: T) => string) =>
  v.custom<T>((value) => {
    try {
      const said = inWords(value as T);
      return v.is(text, said) && !/\bundefined\b|\bnull\b|\bNaN\b|\[object/.test(said);
    } catch {
      return false;
    }
  });
const warnings = listOf(toldBy(warningInWords), 1000);

/** What a plan says: codes with figures that can be said, or the sentences of plans from before plan-16. */
const said = v.custom<Said>(canBeSaid);
const saidAs = (kind: string) =>
  v.pipe(
    said,
    v.check(({ say }) => say.startsWith(`${kind}/`)),
  );
const sentence = v.union([text, said]);
const sentences = v.union([text, listOf(said, 100)]);
const sentenceList = listOf(sentence, 1000);
const title = v.union([text, saidAs('title')]);
const brush = v.optional(v.union([text, listOf(saidAs('brush'), 100)]));
const board = v.optional(sentence);

const mix = v.looseObject({
  id,
  puddle: v.nullable(id),
  wash: figure,
  passage: id,
  family: figure,
  parts,
  load: figure,
  consistency: id,
  target: v.nullable(lab),
  expected: lab,
  expectedWet: lab,
  notes: v.optional(sentenceList),
});

const figures = listOf(figure, 1000);
const step = v.looseObject({
  key: id,
  n: figure,
  kind: id,
  title,
  prompt: sentence,
  watch: sentences,
  bands: figures,
  families: figures,
  slots: figures,
  mixes: listOf(id, 1000),
  paper: id,
  technique: id,
  soften: sentences,
  areas: v.optional(
    listOf(v.looseObject({ name: v.union([text, saidAs('area')]), brush, board }), 100),
  ),
  touches: v.optional(listOf(v.looseObject({ technique: id, text: sentence }), 100)),
  brush,
  board,
  consequence: v.optional(sentence),
  alsoHappens: v.optional(sentenceList),
  notes: v.optional(sentenceList),
  paintMinutes: range,
  shineMinutes: range,
  dryMinutes: range,
  cautions: sentenceList,
  rules: listOf(text, 1000),
  after: listOf(lab, 256),
  look: v.optional(v.instance(Uint8ClampedArray)),
});

export const planRow = isTrue<PlanRow>(
  v.strictObject({
    id,
    paintingId,
    key: v.string(),
    readingId: id,
    createdAt: figure,
    plan: v.looseObject({
      schema: v.literal(1),
      id,
      engine: id,
      paper: lab,
      range: tones,
      slots,
      palette: listOf(
        v.looseObject({ id, ci: text, name: text, why: sentence, darkest: figure }),
        500,
      ),
      optics: listOf(paint, 500),
      mixes: listOf(mix, 2000),
      steps: listOf(step, 2000),
      warnings: listOf(v.looseObject({ code: id, text: sentence }), 1000),
      washesWhy: v.optional(sentence),
      stepsWhy: v.optional(sentence),
      passages: v.optional(v.looseObject({ painted: id, proposed: id, why: sentence })),
      fit: v.optional(
        v.looseObject({
          gaveUp: sentenceList,
          dryer: v.optional(sentence),
          tooLong: v.optional(v.looseObject({ text: sentence })),
        }),
      ),
      leftOut: v.optional(listOf(v.looseObject({ key: id, title }), 1000)),
    }),
  }),
);

const packed = v.strictObject({ packing: v.picklist(['deflate-raw', 'plain']), bytes: buffer });
const sidePx = v.pipe(whole, v.minValue(1), v.maxValue(4096));

export const readingRow = isTrue<ReadingRow>(
  v.strictObject({
    id,
    paintingId,
    createdAt: figure,
    reading: v.looseObject({
      engine: id,
      raster: v.looseObject({ width: sidePx, height: sidePx }),
      sheet: v.looseObject({ widthMm: sideMm, heightMm: sideMm }),
      lightness: v.looseObject({ histogram: figures, p5: figure, p50: figure, p95: figure }),
      bands: listOf(v.looseObject({ band: figure, from: figure, to: figure, share: figure }), 100),
      families: listOf(v.looseObject({ id: figure, lab, share: figure, name: text }), 256),
      slots,
      borders: listOf(v.looseObject({ a: figure, b: figure, lengthMm: figure }), 40_000),
      reserves: v.looseObject({ share: figure, count: figure, smallCount: figure }),
      range: tones,
      warnings,
      bandsWhy: v.optional(v.union([text, toldBy(bandsWhyInWords)])),
      whites: v.optional(
        listOf(v.looseObject({ why: v.union([text, toldBy(whiteWhyInWords)]) }), 100_000),
      ),
    }),
    slotMap: packed,
    lightnessMap: v.optional(packed),
    referenceJpeg: buffer,
  }),
);

const lesson = v.looseObject({
  event: id,
  session: id,
  paint: id,
  name: text,
  seems: v.picklist(['stronger', 'weaker']),
  planned: positive,
  at: figure,
  by: v.optional(positive),
});

export const ownBox = isTrue<OwnBox>(
  v.looseObject({
    schema: v.literal(2),
    owned: v.nullable(listOf(id, 2000)),
    paints: listOf(paint, 2000),
    gone: listOf(id, 2000),
    strengthLessons: v.optional(listOf(lesson)),
    renamed: v.optional(listOf(id, 2000)),
  }),
);
