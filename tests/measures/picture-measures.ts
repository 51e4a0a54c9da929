import { mkdir } from 'node:fs/promises';
import { basename } from 'node:path';
import sharp from 'sharp';
import { type Lab, linearOfLab, tableOf } from '../../app/core/colour/lab.ts';
import { codeOfLinear } from '../../app/core/colour/srgb.ts';
import { drawExpectedSheet } from '../../app/core/compare/expected-sheet.ts';
import { defaultPaperLab } from '../../app/core/paint/colour-of-washes.ts';
import type { Paint } from '../../app/core/paint/paint.ts';
import { placeAmongOwned } from '../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../app/core/palette/checkpoint.ts';
import { darkestOf, usualPaints } from '../../app/core/palette/library/mix-library.ts';
import { buildPlan } from '../../app/core/plan/build-plan.ts';
import type { Step } from '../../app/core/plan/plan.ts';
import { createPlanMemory } from '../../app/core/plan/plan-memory.ts';
import { type LabPlanes, referenceRgba } from '../../app/core/raster/linear-raster.ts';
import { computePxPerMm, type PixelSize } from '../../app/core/raster/size.ts';
import { softBlend, softEdges } from '../../app/core/reading/edges/soft-blend.ts';
import { readPicture } from '../../app/core/reading/read-picture.ts';
import { onTheSheet } from '../../app/core/reading/tone-range.ts';
import { sheetOf, turned } from '../../app/core/reference/sheet.ts';
import { cropToRaster, loadPhoto } from '../../app/tools/plan/load-photo.ts';
import { contrastLeft, featuresIn } from '../support/plan/features.ts';
import { nearestFreeMixes } from '../support/plan/free-mixes.ts';
import {
  freePoster,
  type PictureDistance,
  pictureDistance,
  seenPlanes,
} from '../support/plan/picture-distance.ts';
import { twoUnseenPhotographs } from '../support/reading/eight-photographs.ts';
import { sixPhotographs } from './six-plans.ts';

/** The twelve paints that most painters own. */
export const twelvePaints: readonly Paint[] = [...usualPaints]
  .sort((one, other) => placeAmongOwned(one.id) - placeAmongOwned(other.id))
  .slice(0, 12);

/** Seen at arm's length: both pictures are blurred by so much on the sheet, mm. */
const seenAtMm = 0.5;
const posterColours = 8;
/** A feature stands out where so much of its contrast in the photo is left. */
const standsOutFrom = 0.4;

const rowsOf = (colours: readonly number[]): Lab[] =>
  Array.from({ length: colours.length / 3 }, (_, row): Lab => {
    const [l, a, b] = colours.slice(3 * row, 3 * row + 3) as [number, number, number];
    return [l, a, b];
  });

/** Photograph and last expected sheet, and how near shapes, and paints without washes, could come; sRGB bytes. */
async function photoAndSheet(file: string, box: readonly Paint[]) {
  const photo = await loadPhoto(file);
  const across = photo.width >= photo.height ? 'across' : 'upright';
  const { widthMm, heightMm } = turned(sheetOf('quarter', 'across'), across);
  const sheet = { widthMm, heightMm };
  const { raster, clipped } = cropToRaster(photo, { format: 'own', ...sheet });
  const reference = referenceRgba(raster);
  const size = { width: raster.width, height: raster.height };
  const { reading, slotMap } = await readPicture(
    {
      raster,
      clipped,
      sheet,
      wishes: {},
      darkest: darkestOf(box),
      paper: defaultPaperLab[0],
    },
    noCheckpoint,
  );
  const wishes = box === usualPaints ? {} : { box: box.map(({ id }) => id) };
  const plan = await buildPlan(reading, wishes, noCheckpoint, createPlanMemory());
  const blend = softBlend(slotMap, reading.raster, softEdges(reading.edges ?? [], reading.raster));
  const last = plan.steps.at(-1) ?? { after: [] };
  const drawn = (step: Pick<Step, 'after' | 'look' | 'marks'>) =>
    drawExpectedSheet(reading, slotMap, blend, size, step);
  // The plan's shapes in their own colours in its tones, and the nearest to these that its paints can do.
  const shapes = (reading.squares?.colours ?? []).map((value, i) =>
    i % 3 === 0 ? onTheSheet(plan.range, value) : value,
  );
  const drawnIn = (colours: readonly number[]) =>
    drawn({ after: last.after, look: tableOf(rowsOf(colours)) });
  const whole = { width: photo.width, height: photo.height };
  return {
    size,
    whole,
    pxPerMm: computePxPerMm(size, sheet),
    reference,
    painted: drawn(last),
    shapes: drawnIn(shapes),
    free: drawnIn(nearestFreeMixes(plan.optics, shapes)),
    plan,
  };
}

function rgbaOf({ lightness, a, b }: LabPlanes): Uint8ClampedArray {
  const rgba = new Uint8ClampedArray(4 * lightness.length).fill(255);
  for (let i = 0; i < lightness.length; i++) {
    const lab = [lightness[i] as number, a[i] as number, b[i] as number] as const;
    for (const [c, linear] of linearOfLab(lab).entries()) rgba[4 * i + c] = codeOfLinear(linear);
  }
  return rgba;
}

/** Pictures side by side at half size, to be looked at. */
async function writeSideBySide(
  file: string,
  size: PixelSize,
  pictures: readonly Uint8ClampedArray[],
): Promise<void> {
  const [width, height] = [size.width >> 1, size.height >> 1];
  const small = await Promise.all(
    pictures.map((rgba) =>
      sharp(rgba, { raw: { ...size, channels: 4 } })
        .resize(width, height)
        .png()
        .toBuffer(),
    ),
  );
  await sharp({
    create: { width: width * pictures.length, height, channels: 3, background: '#808080' },
  })
    .composite(small.map((input, n) => ({ input, left: n * width, top: 0 })))
    .png()
    .toFile(file);
}

const inWords = (d: PictureDistance): string =>
  `CIEDE2000 ${d.colour.toFixed(2)}, |dL*| ${d.lightness.toFixed(2)}, colourful tenth ${d.colourful.toFixed(1)}, L* ${d.darkest.toFixed(0)} to ${d.lightest.toFixed(0)}, detail r ${d.correlation.toFixed(2)} strength ${d.strength.toFixed(2)}, SSIM ${d.similarity.toFixed(3)}`;

/**
 * How near the last expected sheet comes to the photograph, for six photographs and two more that count in no mean,
 * beside a free poster of 8 colours and the photograph in the tones of the plan. What keeps it off is told in steps: the
 * plan's shapes in their own colours in these tones, then the nearest its paints can do there, freely mixed. And how many
 * features marked by hand stand out. Writes photograph, sheet and poster side by side into `folder`.
 */
export async function measurePictures(
  folder: string,
  box: readonly Paint[] = usualPaints,
): Promise<void> {
  await mkdir(folder, { recursive: true });
  const ratios: number[] = [];
  let [marked, seenFeatures] = [0, 0];
  for (const file of [...sixPhotographs, ...twoUnseenPhotographs]) {
    const name = /datasets-img-([^/]+)/.exec(file)?.[1] ?? basename(file, '.jpg');
    const {
      size,
      whole,
      pxPerMm,
      reference,
      painted,
      shapes,
      free: freely,
      plan,
    } = await photoAndSheet(file, box);
    const seen = (rgba: Uint8ClampedArray): LabPlanes => seenPlanes(rgba, size, seenAtMm * pxPerMm);
    const photo = seen(reference);
    const poster = freePoster(photo, posterColours);
    const toned = {
      ...photo,
      lightness: photo.lightness.map((lightness) => onTheSheet(plan.range, lightness)),
    };
    const distance = (planes: LabPlanes): PictureDistance =>
      pictureDistance(photo, planes, size, pxPerMm);
    const sheet = seen(painted);
    const ours = distance(sheet);
    const features = (await featuresIn(file)).map((feature) => ({
      name: feature.name,
      left: contrastLeft(feature, [photo, sheet], size, whole, pxPerMm),
    }));
    const standing = features.filter(({ left }) => left >= standsOutFrom);
    if (sixPhotographs.includes(file)) {
      marked += features.length;
      seenFeatures += standing.length;
    }
    const free = distance(poster);
    if (sixPhotographs.includes(file)) ratios.push(ours.colour / Math.max(2.5, free.colour));
    console.log(`${name}: ${plan.palette.map((paint) => paint.name).join(', ')}
  photo                     L* ${distance(photo).darkest.toFixed(0)} to ${distance(photo).lightest.toFixed(0)}
  last sheet to photo       ${inWords(ours)}
  free poster of ${posterColours} colours  ${inWords(free)}
  photo in the plan's tones ${inWords(distance(toned))}
  its shapes in these tones ${inWords(distance(seen(shapes)))}
  in mixes free of washes   ${inWords(distance(seen(freely)))}
  features ${standing.length} of ${features.length} stand out: ${features.map(({ name, left }) => `${name} ${left.toFixed(2)}`).join(', ')}`);
    await writeSideBySide(`${folder}/${name}.png`, size, [reference, painted, rgbaOf(poster)]);
  }
  const mean = ratios.reduce((all, ratio) => all + ratio, 0) / ratios.length;
  console.log(
    `sheet to photo over the larger of the poster's and 2.5: mean ${mean.toFixed(2)}, most ${Math.max(...ratios).toFixed(2)}; ${seenFeatures} of ${marked} features marked by hand stand out`,
  );
}
