import type { Point } from '../../../app/model/lab.ts';
import type { MeasuredPhoto } from '../../../app/model/measured-photo.ts';
import type { PatchFrame } from '../../../app/model/patch-frame.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';
import { framedColour } from './framed-colour.ts';
import { paintedAreas } from './painted-areas.ts';
import { paperLab } from './paper-lab.ts';
import { type PaperLight, paperLight } from './paper-light.ts';
import { paperTiles, type Tile } from './paper-tiles.ts';
import { readingOrder } from './reading-order.ts';
import { smallRaster } from './small-raster.ts';

/** Patches are looked for at about this long side, px: grain and noise are gone, patches are not. */
const searchLongSidePx = 320;
/** More areas than this are no patches: speckle or a pattern. */
const mostPatches = 24;
const papersShown = 8;
/** Paper darker than this in linear light leaves too little for the darks. */
const darkestPaper = 0.12;
const burntOut = 0.985;

const noPaper =
  'No bare paper was found in the photo. Leave two fingers of unpainted white paper round the patches, fill the frame with the sheet, and take it again in even light.';

function checkLight({ paper }: PaperLight): void {
  const levels = paper.map(({ logs }) => Math.exp(Math.max(...logs))).sort((a, b) => a - b);
  const middle = levels[levels.length >> 1] ?? 0;
  if (middle < darkestPaper) {
    throw new RangeError(
      'The photo is too dark: even the paper is grey. Take it again in more light, in open shade or under an overcast sky, without flash.',
    );
  }
  if (middle > burntOut) {
    throw new RangeError(
      'The paper is burnt out to pure white, so colours beside it can not be trusted. Take the photo again a little darker.',
    );
  }
}

/** Some of the places taken for paper, far from each other. */
function shownPapers(tiles: readonly Tile[]): Point[] {
  const chosen: Point[] = [];
  const apart = ([x, y]: Point): number =>
    Math.min(2, ...chosen.map(([x2, y2]) => Math.hypot(x - x2, y - y2)));
  while (chosen.length < Math.min(papersShown, tiles.length)) {
    const next = tiles.reduce((far, tile) => (apart(tile.place) > apart(far.place) ? tile : far));
    chosen.push(next.place);
  }
  return chosen;
}

const covers = (frame: PatchFrame, [x, y]: Point): boolean =>
  x > frame.left && x < frame.left + frame.width && y > frame.top && y < frame.top + frame.height;

/**
 * Measures the painted patches on a photo of a sheet. `frames` are hers, or null to find them. The light
 * on the sheet (falling off, coloured) is fitted to its bare paper and taken out. Throws a RangeError with
 * a painter's sentence where there is no bare paper, or no patch.
 */
export function findPatches(
  raster: LinearRaster,
  frames: readonly PatchFrame[] | null,
): MeasuredPhoto {
  const block = Math.max(1, Math.round(Math.max(raster.width, raster.height) / searchLongSidePx));
  const small = smallRaster(raster, block);
  const tiles = paperTiles(small).filter(
    ({ place }) => !frames?.some((frame) => covers(frame, place)),
  );
  const light = paperLight(tiles);
  if (!light) throw new RangeError(noPaper);
  checkLight(light);
  const found =
    frames ?? readingOrder(paintedAreas(paperLab(small, light), small.width, small.height));
  if (found.length === 0 || found.length > mostPatches) {
    throw new RangeError(
      'No patches were found on the paper. See that they do not touch each other or the edge of the photo, or put the frames on them yourself.',
    );
  }
  return {
    patches: found.map((frame) => framedColour(raster, light, frame)),
    paper: shownPapers(light.paper),
  };
}
