import { parseArgs } from 'node:util';
import type { Point } from '../../core/colour/lab.ts';
import { type PassagesChoice, passagesChoices } from '../../core/decisions/plan-edit.ts';
import type { PlanWishes } from '../../core/decisions/plan-wishes.ts';
import type { PaperChoice } from '../../core/drying/paper-choice.ts';
import { roomWeather } from '../../core/drying/weather.ts';
import {
  fewestBands,
  fewestEveningMinutes,
  fewestPointsRound,
  largestPalette,
  mostBands,
  mostEveningMinutes,
  mostWashes,
} from '../../core/limits.ts';
import type { Paint } from '../../core/paint/paint.ts';
import type { SubjectStroke } from '../../core/reading/subject/subject.ts';
import {
  largestSheetMm,
  type Sheet,
  sheetFormats,
  smallestSheetMm,
} from '../../core/reference/sheet.ts';

/** A wrong option or an unreadable file: one line for stderr, exit code 2. */
export class CommandError extends Error {
  override readonly name = 'CommandError';
}

const planUsage =
  'use: npm run --silent plan -- PHOTO [--sheet 381x279] [--bands 4] [--palette 5] [--paints id,id|FILE.json] [--evening MINUTES] [--dryer] [--washes N] [--paper GSM[,FIBRE]] [--subject "X,Y X,Y X,Y"] [--passages ground-first|subject-first|together] [--out DIR]';

/** What --help prints. */
export const planHelp = `${planUsage}
  PHOTO            a picture file: JPEG, PNG, WebP
  --sheet WxH      sheet in mm, turned to the photo
  --bands N        value bands, ${fewestBands} to ${mostBands}
  --palette N      at most N paints, 1 to ${largestPalette}
  --paints id,id   ids of built-in paints: used as they are, or chosen from where they are more than the palette holds
  --paints FILE.json   likewise paints of your own: { "paints": [{ "id", "name", "ci": ["PB29"], "K": [36 numbers], "S": [36 numbers], "properties"?: {...} }] }
  --evening N      minutes for one evening, ${fewestEveningMinutes} to ${mostEveningMinutes}: the plan is made to fit them
  --dryer          a hair dryer is at hand
  --washes N       at most N washes over each other, 1 to ${mostWashes}
  --paper GSM      paper in g/m2, also GSM,cotton or GSM,cellulose; 300,cotton when left out
  --subject "X,Y X,Y X,Y"   places of a loose loop round the subject, at least three, 0 to 1 from left and top of the photo as it is cropped
  --passages ORDER   ground-first, subject-first or together instead of the proposed order; only with --subject
  --out DIR        writes pictures there
One JSON object on stdout; a wrong option or file is one line on stderr, exit code 2. Details: DEVELOPERS.md, The plan command.
`;

const lightest = 50;
const heaviest = 1200;

/** --paper: '300' or '300,cellulose'. Errors: `CommandError`. */
function paperOption(text: string): PaperChoice {
  const found = /^(\d+)(?:,(cotton|cellulose))?$/.exec(text);
  const gsm = Number(found?.[1]);
  if (!found || gsm < lightest || gsm > heaviest) {
    throw new CommandError(
      `--paper must be GSM or GSM,cotton or GSM,cellulose, GSM from ${lightest} to ${heaviest}, not "${text}"`,
    );
  }
  return { gsm, fibre: found[2] === 'cellulose' ? 'cellulose' : 'cotton' };
}

const optionOf = (choice: PassagesChoice): string => choice.replace(' ', '-');

/** --passages: 'ground-first', 'subject-first' or 'together'. Errors: `CommandError`. */
function passagesOption(text: string): PassagesChoice {
  const found = passagesChoices.find((choice) => optionOf(choice) === text);
  if (found) return found;
  throw new CommandError(
    `--passages must be ${passagesChoices.map(optionOf).join(' or ')}, not "${text}"`,
  );
}

function pointFrom(text: string): Point | null {
  const found = /^(\d*\.?\d+),(\d*\.?\d+)$/.exec(text);
  const [x, y] = [Number(found?.[1]), Number(found?.[2])];
  return x >= 0 && x <= 1 && y >= 0 && y <= 1 ? [x, y] : null;
}

/** --subject: 'X,Y X,Y X,Y ...', a loose loop round the subject, 0..1 of the cropped photo. Errors: `CommandError`. */
function subjectOption(text: string): SubjectStroke {
  const points = text.trim().split(/\s+/).map(pointFrom);
  const path = points.filter((point) => point !== null);
  if (path.length === points.length && path.length >= fewestPointsRound) {
    return { mode: 'circle', path, brush: 0 };
  }
  throw new CommandError(
    `--subject must be at least ${fewestPointsRound} places "X,Y X,Y X,Y" round the subject, each from 0 to 1, not "${text}"`,
  );
}

export interface PlanOptions {
  readonly photo: string;
  readonly sheet: Sheet;
  readonly bands?: number;
  readonly palette?: number;
  /** Ids of built-in paints; absent, as the file is: the whole built-in box. */
  readonly paints?: readonly string[];
  /** JSON file of paints with their own optics. */
  readonly paintsFile?: string;
  /** Minutes she has in one evening; absent: no hurry. */
  readonly evening?: number;
  /** A hair dryer is at hand. */
  readonly dryer?: true;
  /** Washes over each other at most; absent: as proposed. */
  readonly washes?: number;
  /** Absent: the usual paper. */
  readonly paper?: PaperChoice;
  /** Drawn round the subject; absent: the sheet is one passage. */
  readonly subject?: SubjectStroke;
  /** Order of ground and subject; absent: as proposed. */
  readonly passages?: PassagesChoice;
  readonly out?: string;
}

function wholeNumber(name: string, text: string, least: number, most: number): number {
  const number = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (number >= least && number <= most) return number;
  throw new CommandError(
    `--${name} must be a whole number from ${least} to ${most}, not "${text}"`,
  );
}

function sheetFrom(text: string): Sheet {
  const found = /^(\d+(?:\.\d+)?)x(\d+(?:\.\d+)?)$/.exec(text);
  const widthMm = Number(found?.[1]);
  const heightMm = Number(found?.[2]);
  const fits = (mm: number): boolean => mm >= smallestSheetMm && mm <= largestSheetMm;
  if (fits(widthMm) && fits(heightMm)) return { format: 'own', widthMm, heightMm };
  throw new CommandError(
    `--sheet must be WIDTHxHEIGHT in mm, each ${smallestSheetMm} to ${largestSheetMm}, not "${text}"`,
  );
}

function parsed(args: readonly string[]) {
  const text = { type: 'string' } as const;
  try {
    return parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        sheet: text,
        bands: text,
        palette: text,
        paints: text,
        evening: text,
        dryer: { type: 'boolean' },
        washes: text,
        paper: text,
        subject: text,
        passages: text,
        out: text,
      },
    });
  } catch (thrown) {
    const first = (thrown instanceof Error ? thrown.message : String(thrown)).split(/[.\n]/)[0];
    throw new CommandError(`${first}; ${planUsage}`);
  }
}

/** The command's words as options. Errors: `CommandError` with one line on what is wrong. */
export function planOptions(args: readonly string[]): PlanOptions {
  const { values, positionals } = parsed(args);
  const [photo, ...more] = positionals;
  if (photo === undefined) throw new CommandError(`no photo given; ${planUsage}`);
  if (more.length > 0)
    throw new CommandError(`one photo at a time, not also "${more[0]}"; ${planUsage}`);
  const { shortMm, longMm } = sheetFormats.quarter;
  const paintsFile = values.paints?.endsWith('.json') ? values.paints : undefined;
  const paints = paintsFile ? undefined : values.paints?.split(',').map((id) => id.trim());
  if (paints?.some((id) => id === '')) {
    throw new CommandError(
      `--paints must be paint ids with commas between, or a .json file, not "${values.paints}"`,
    );
  }
  if (values.passages !== undefined && values.subject === undefined) {
    throw new CommandError(
      '--passages needs --subject: without a subject the sheet is painted as one',
    );
  }
  return {
    photo,
    sheet: sheetFrom(values.sheet ?? `${longMm}x${shortMm}`),
    ...(values.bands !== undefined && {
      bands: wholeNumber('bands', values.bands, fewestBands, mostBands),
    }),
    ...(values.palette !== undefined && {
      palette: wholeNumber('palette', values.palette, 1, largestPalette),
    }),
    ...(paints && { paints }),
    ...(paintsFile && { paintsFile }),
    ...(values.evening !== undefined && {
      evening: wholeNumber('evening', values.evening, fewestEveningMinutes, mostEveningMinutes),
    }),
    ...(values.dryer && { dryer: true }),
    ...(values.washes !== undefined && {
      washes: wholeNumber('washes', values.washes, 1, mostWashes),
    }),
    ...(values.paper !== undefined && { paper: paperOption(values.paper) }),
    ...(values.subject !== undefined && { subject: subjectOption(values.subject) }),
    ...(values.passages !== undefined && { passages: passagesOption(values.passages) }),
    ...(values.out !== undefined && { out: values.out }),
  };
}

/** What concerns time, air, paper and order. */
const circumstances = ({ evening, dryer, washes, paper, passages }: PlanOptions): PlanWishes => ({
  ...(evening !== undefined && { evening }),
  ...(dryer && { weather: { ...roomWeather, hairDryer: true } }),
  ...(washes !== undefined && { washes }),
  ...(paper && { paper }),
  ...(passages && { passages }),
});

/**
 * Paints named are used as they are; where they are more than the palette may hold they are the
 * box to choose from. `known` are the ids of the built-in box; `own` are paints of a file, which count
 * as if they had been named.
 */
export function wishesFromOptions(
  options: PlanOptions,
  known: readonly string[],
  own: readonly Paint[] = [],
): PlanWishes {
  const size = options.palette === undefined ? {} : { paletteSize: options.palette };
  const paints = [...new Set([...(options.paints ?? []), ...own.map(({ id }) => id)])];
  const given = circumstances(options);
  if (paints.length === 0) return { ...size, ...given };
  const unknown = options.paints?.find((id) => !known.includes(id));
  if (unknown !== undefined) {
    throw new CommandError(
      `--paints: there is no paint "${unknown}"; known are ${known.join(', ')}`,
    );
  }
  const asTheyAre = paints.length <= (options.palette ?? largestPalette);
  return {
    ...given,
    ...(asTheyAre ? { chosen: paints } : { box: paints, ...size }),
    ...(own.length > 0 && { ownPaints: own }),
  };
}
