import { ReadingDesk } from '../../../workers/kernels/reading-desk.ts';
import { defaultPaperLab } from '../../core/paint/colour-of-washes.ts';
import { knownPaints, paintBox } from '../../core/paint/paint-box.ts';
import { darkestInSteps, usualPaints } from '../../core/palette/library/mix-library.ts';
import { paintsAllowed } from '../../core/palette/paints-allowed.ts';
import { buildPlan } from '../../core/plan/build-plan.ts';
import { createPlanMemory } from '../../core/plan/plan-memory.ts';
import { greyOf, referenceRgba } from '../../core/raster/linear-raster.ts';
import { photoWarnings } from '../../core/reading/photo-warnings.ts';
import { readPicture } from '../../core/reading/read-picture.ts';
import { turned } from '../../core/reference/sheet.ts';
import { cropToRaster, loadPhoto } from './load-photo.ts';
import { readOwnPaints } from './own-paints-file.ts';
import { planJson } from './plan-json.ts';
import { CommandError, planHelp, planOptions, wishesFromOptions } from './plan-options.ts';
import { recordAsText } from './plan-record.ts';
import { writePictures } from './write-pictures.ts';

const goOn = async (): Promise<void> => {};

async function made(args: readonly string[]): Promise<string> {
  const options = planOptions(args);
  const own = options.paintsFile === undefined ? [] : await readOwnPaints(options.paintsFile);
  const wishes = wishesFromOptions(
    options,
    paintBox.map((paint) => paint.id),
    own,
  );
  try {
    paintsAllowed(knownPaints(own), wishes);
  } catch (thrown) {
    throw new CommandError(thrown instanceof Error ? thrown.message : String(thrown));
  }
  const photo = await loadPhoto(options.photo);
  const sheet = turned(options.sheet, photo.width >= photo.height ? 'across' : 'upright');
  const { raster, clipped, share } = cropToRaster(photo, sheet);
  const memory = createPlanMemory();
  const {
    reading: seen,
    slotMap,
    bandMap,
    lightnessMap,
  } = await readPicture(
    {
      raster,
      clipped,
      sheet: { widthMm: sheet.widthMm, heightMm: sheet.heightMm },
      wishes: {
        ...(options.bands !== undefined && { bands: options.bands }),
        ...(options.subject && { subject: [options.subject] }),
      },
      darkest: await darkestInSteps(usualPaints, goOn, memory.darkest),
      paper: defaultPaperLab[0],
      tools: new ReadingDesk().lend(raster),
    },
    goOn,
  );
  const told = photoWarnings({ damaged: photo.damaged, shaky: false, share });
  const reading = { ...seen, warnings: [...told, ...seen.warnings] };
  const plan = await buildPlan(reading, wishes, goOn, memory);
  if (options.out !== undefined) {
    const pictures = { reference: referenceRgba(raster), grey: greyOf(raster), slotMap, bandMap };
    await writePictures(options.out, reading, plan, pictures);
  }
  const record = recordAsText(reading, plan, slotMap, lightnessMap);
  return JSON.stringify({ ...planJson(reading, plan, options.out !== undefined), record });
}

/** Errors: `CommandError` where a disk is full; whoever reads no further has what he wanted. */
export const written = (stream: NodeJS.WriteStream, text: string): Promise<void> =>
  new Promise((done, failed) => {
    const passOver = (): void => {}; // the answer to the write tells the same
    stream.once('error', passOver);
    stream.write(text, (fault) => {
      const full = fault && (fault as NodeJS.ErrnoException).code !== 'EPIPE';
      if (full) failed(new CommandError("the answer can't be written: make room on the disk"));
      else done();
      if (!fault) stream.off('error', passOver);
    });
  });

/** What a file or a name brings along must neither break the line nor reach the terminal as a command. */
export const onOneLine = (text: string): string =>
  text.replace(/\p{Cc}/gu, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);

/**
 * The whole command: photo in, one JSON object on stdout. Answers the exit code: 2 with one line on
 * stderr for a wrong option or an unreadable file.
 */
export async function runPlan(args: readonly string[]): Promise<number> {
  try {
    const help = args.includes('--help');
    await written(process.stdout, help ? planHelp : `${await made(args)}\n`);
    return 0;
  } catch (thrown) {
    if (!(thrown instanceof CommandError)) throw thrown;
    const line = `plan: ${onOneLine(thrown.message)}\n`;
    await written(process.stderr, line).catch(() => undefined);
    return 2;
  }
}
