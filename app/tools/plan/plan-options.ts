import { parseArgs } from 'node:util';
import type { PaperChoice } from '../../model/drying/paper-choice.ts';
import type { PassagesChoice } from '../../model/passages-choice.ts';
import { largestSheetMm, type Sheet, sheetFormats, smallestSheetMm } from '../../model/sheet.ts';
import type { SubjectStroke } from '../../model/subject.ts';
import { CommandError } from './command-error.ts';
import { paperOption } from './paper-option.ts';
import { passagesOption } from './passages-option.ts';
import { planUsage } from './plan-usage.ts';
import { subjectOption } from './subject-option.ts';

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
    ...(values.bands !== undefined && { bands: wholeNumber('bands', values.bands, 2, 7) }),
    ...(values.palette !== undefined && { palette: wholeNumber('palette', values.palette, 1, 7) }),
    ...(paints && { paints }),
    ...(paintsFile && { paintsFile }),
    ...(values.evening !== undefined && {
      evening: wholeNumber('evening', values.evening, 10, 600),
    }),
    ...(values.dryer && { dryer: true }),
    ...(values.washes !== undefined && { washes: wholeNumber('washes', values.washes, 1, 8) }),
    ...(values.paper !== undefined && { paper: paperOption(values.paper) }),
    ...(values.subject !== undefined && { subject: subjectOption(values.subject) }),
    ...(values.passages !== undefined && { passages: passagesOption(values.passages) }),
    ...(values.out !== undefined && { out: values.out }),
  };
}
