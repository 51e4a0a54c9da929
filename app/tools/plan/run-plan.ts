import { defaultPaperLab } from '../../../workers/kernels/optics/default-paper.ts';
import { knownPaints, paintBox } from '../../../workers/kernels/optics/paint-box.ts';
import { darkestOf, usualPaints } from '../../../workers/kernels/palette/darkest-of.ts';
import { paintsAllowed } from '../../../workers/kernels/palette/paints-allowed.ts';
import { greyOf, referenceRgba } from '../../../workers/kernels/pixels/raster-pictures.ts';
import { buildWashPlan } from '../../../workers/kernels/plan/build-wash-plan.ts';
import { readPicture } from '../../../workers/kernels/read-picture.ts';
import { turned } from '../../model/sheet.ts';
import { CommandError } from './command-error.ts';
import { loadPhoto } from './load-photo.ts';
import { readOwnPaints } from './own-paints-file.ts';
import { planJson } from './plan-json.ts';
import { planOptions } from './plan-options.ts';
import { writePictures } from './plan-pictures.ts';
import { planHelp } from './plan-usage.ts';
import { planWishes } from './plan-wishes.ts';
import { rasterOf } from './raster-of.ts';

const goOn = async (): Promise<void> => {};

async function made(args: readonly string[]): Promise<string> {
  const options = planOptions(args);
  const own = options.paintsFile === undefined ? [] : await readOwnPaints(options.paintsFile);
  const wishes = planWishes(
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
  const { raster, clipped } = rasterOf(photo, sheet);
  const { reading, slotMap, bandMap } = await readPicture(
    {
      raster,
      clipped,
      sheet: { widthMm: sheet.widthMm, heightMm: sheet.heightMm },
      wishes: {
        ...(options.bands !== undefined && { bands: options.bands }),
        ...(options.subject && { subject: [options.subject] }),
      },
      darkest: darkestOf(usualPaints),
      paper: defaultPaperLab[0],
    },
    goOn,
  );
  const plan = await buildWashPlan(reading, wishes, goOn);
  if (options.out !== undefined) {
    const pictures = { reference: referenceRgba(raster), grey: greyOf(raster), slotMap, bandMap };
    await writePictures(options.out, reading, plan, pictures);
  }
  return JSON.stringify(planJson(reading, plan, options.out !== undefined));
}

const written = (stream: NodeJS.WriteStream, text: string): Promise<void> =>
  new Promise((resolve) => {
    stream.write(text, () => resolve());
  });

/**
 * The whole command: photo in, one JSON object on stdout. Answers the exit code: 2 with one line on
 * stderr for a wrong option or an unreadable file.
 */
export async function runPlan(args: readonly string[]): Promise<number> {
  if (args.includes('--help')) {
    await written(process.stdout, planHelp);
    return 0;
  }
  try {
    await written(process.stdout, `${await made(args)}\n`);
    return 0;
  } catch (thrown) {
    if (!(thrown instanceof CommandError)) throw thrown;
    await written(process.stderr, `plan: ${thrown.message}\n`);
    return 2;
  }
}
