import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import type { Point } from '../../core/colour/lab.ts';
import { compareSheet } from '../../core/compare/compare-sheet.ts';
import type { Comparison, SheetWetness } from '../../core/compare/comparison.ts';
import { type Corners, isConvex } from '../../core/compare/homography.ts';
import { noCheckpoint } from '../../core/palette/checkpoint.ts';
import { RasterReducer } from '../../core/raster/raster-reducer.ts';
import { type PixelSize, rasterSize } from '../../core/raster/size.ts';
import {
  adviceInWords,
  comparisonInWords,
  edgeVerdictInWords,
  refusalInWords,
  tipInWords,
  verdictInWords,
  wholeInWords,
} from '../../core/words/compare/compare-words.ts';
import { loadPhoto } from '../plan/load-photo.ts';
import { CommandError } from '../plan/plan-options.ts';
import { type PlanRecord, recordFrom } from '../plan/plan-record.ts';
import { onOneLine, written } from '../plan/run-plan.ts';

const usage =
  'use: npm run --silent compare -- PHOTO --plan PLAN.json [--stage N] [--corners X,Y,X,Y,X,Y,X,Y] [--wetness dry|satin|shiny]';

const help = `${usage}
  PHOTO            a photo of the sheet: JPEG, PNG, WebP
  --plan FILE      what npm run plan printed
  --stage N        number of the plan's step that was done last; the last one when left out
  --corners X,Y,X,Y,X,Y,X,Y   corners of the sheet in the upright photo, clockwise from the sheet's upper left: px, or 0 to 1 of its sides
  --wetness STATE  dry, satin or shiny; dry when left out
One JSON object on stdout; a wrong option or file is one line on stderr, exit code 2. Details: DEVELOPERS.md, The compare command.
`;

interface CompareOptions {
  readonly photo: string;
  readonly plan: string;
  readonly stage?: number;
  readonly corners?: readonly number[];
  readonly wetness: SheetWetness;
}

const wetnesses: readonly SheetWetness[] = ['dry', 'satin', 'shiny'];

/** Eight numbers. Errors: `CommandError`. */
function cornersOption(text: string): readonly number[] {
  const numbers = text
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  if (numbers.length === 8 && numbers.every((each) => Number.isFinite(each))) return numbers;
  throw new CommandError(
    `--corners must be four places X,Y,X,Y,X,Y,X,Y, clockwise from the sheet's upper left, not "${text}"`,
  );
}

function stageOption(text: string): number {
  if (/^[1-9]\d*$/.test(text)) return Number(text);
  throw new CommandError(`--stage must be the number of a step of the plan, not "${text}"`);
}

/** The command's words as options. Errors: `CommandError` with one line on what is wrong. */
export function compareOptions(args: readonly string[]): CompareOptions {
  const text = { type: 'string' } as const;
  const parse = () => {
    try {
      const options = { plan: text, stage: text, corners: text, wetness: text };
      return parseArgs({ args: [...args], allowPositionals: true, options });
    } catch (thrown) {
      const first = (thrown instanceof Error ? thrown.message : String(thrown)).split(/[.\n]/)[0];
      throw new CommandError(`${first}; ${usage}`);
    }
  };
  const { values, positionals } = parse();
  const [photo, ...more] = positionals;
  if (photo === undefined) throw new CommandError(`no photo given; ${usage}`);
  if (more.length > 0)
    throw new CommandError(`one photo at a time, not also "${more[0]}"; ${usage}`);
  if (values.plan === undefined) throw new CommandError(`--plan is missing; ${usage}`);
  const wetness = wetnesses.find((each) => each === (values.wetness ?? 'dry'));
  if (!wetness)
    throw new CommandError(`--wetness must be ${wetnesses.join(' or ')}, not "${values.wetness}"`);
  return {
    photo,
    plan: values.plan,
    wetness,
    ...(values.stage !== undefined && { stage: stageOption(values.stage) }),
    ...(values.corners !== undefined && { corners: cornersOption(values.corners) }),
  };
}

/** The record in a file that the plan command printed. Errors: `CommandError`. */
async function planRecord(file: string): Promise<PlanRecord> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (thrown) {
    const missing = (thrown as NodeJS.ErrnoException).code === 'ENOENT';
    throw new CommandError(
      `--plan ${file}${missing ? ': there is no such file' : " can't be read"}`,
    );
  }
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    throw new CommandError(`--plan ${file}: this is not JSON`);
  }
  const record =
    typeof json === 'object' && json !== null && 'record' in json && typeof json.record === 'string'
      ? recordFrom(json.record)
      : null;
  if (record) return record;
  throw new CommandError(
    `--plan ${file}: it has no record of the sheet; make it again with npm run --silent plan -- PHOTO > PLAN.json`,
  );
}

/** Hers as shares of the photo's sides: numbers beyond 1 are px. Errors: `CommandError`. */
function cornersIn(numbers: readonly number[], { width, height }: PixelSize): Corners {
  const inPx = numbers.some((each) => each > 1.05);
  const place = (n: number): Point => {
    const [x = 0, y = 0] = numbers.slice(2 * n, 2 * n + 2);
    return inPx ? [x / width, y / height] : [x, y];
  };
  const corners: Corners = [place(0), place(1), place(2), place(3)];
  if (!isConvex(corners))
    throw new CommandError(
      '--corners do not go round a sheet: give them clockwise from its upper left',
    );
  return corners;
}

/** Numbers with as many digits as mean something. */
const rounded = (_key: string, value: unknown): unknown =>
  typeof value === 'number' && !Number.isInteger(value) ? Number(value.toPrecision(5)) : value;

/** What the command prints: figures with the sentences that say them. */
function compareJson(comparison: Comparison, { plan, reading }: PlanRecord) {
  if (comparison.refused !== null)
    return { ...comparison, summary: refusalInWords(comparison.refused) };
  const { shapes, edges, advice, tips, whole } = comparison;
  const { sheet } = reading;
  return {
    ...comparison,
    summary: comparisonInWords(comparison, plan, reading),
    shapes: shapes.map(({ shapes: own, ...shape }) => ({
      ...shape,
      count: own.length,
      areaMm2: shape.share * sheet.widthMm * sheet.heightMm,
      text: verdictInWords({ ...shape, shapes: own }, plan, reading),
    })),
    edges: edges.map((edge) => ({ ...edge, text: edgeVerdictInWords(edge) })),
    whole: { ...whole, text: wholeInWords(comparison) },
    tips: tips.map((code) => ({ code, text: tipInWords(code) })),
    advice: advice.map(({ shapes: own, ...each }) => ({
      ...each,
      count: own.length,
      text: adviceInWords({ ...each, shapes: own }, plan, reading),
    })),
  };
}

async function compared(args: readonly string[]): Promise<string> {
  const options = compareOptions(args);
  const record = await planRecord(options.plan);
  const { reading, plan, slotMap, grey } = record;
  const last = plan.steps.at(-1)?.n ?? 0;
  const step = options.stage ?? last;
  if (step > last) throw new CommandError(`--stage: the plan has ${last} steps, not ${step}`);
  const photo = await loadPhoto(options.photo);
  const corners = options.corners && cornersIn(options.corners, photo);
  const reducer = new RasterReducer(photo, rasterSize(photo.width, photo.height), photo.space);
  reducer.addRows(photo.rgba, photo.height);
  const { comparison } = await compareSheet(
    {
      photo: reducer.finish().raster,
      ...{ reading, slotMap, plan, step, grey, wetness: options.wetness },
      ...(corners && { corners }),
    },
    noCheckpoint,
  );
  return JSON.stringify(compareJson(comparison, record), rounded);
}

/**
 * The whole command: a photo of the sheet and its plan in, one JSON object on stdout. Answers the exit code: 2 with
 * one line on stderr for a wrong option or an unreadable file.
 */
export async function runCompare(args: readonly string[]): Promise<number> {
  try {
    const answer = args.includes('--help') ? help : `${await compared(args)}\n`;
    await written(process.stdout, answer);
    return 0;
  } catch (thrown) {
    if (!(thrown instanceof CommandError)) throw thrown;
    const line = `compare: ${onOneLine(thrown.message)}\n`;
    await written(process.stderr, line).catch(() => undefined);
    return 2;
  }
}
