import { fewestBands, largestPalette, mostBands, mostFamilies } from '../limits.ts';
import { spellCount } from './numbers.ts';

// What is wrong with what she gave, and what to do: thrown where it is found, and shown to her as it is.

/** Of a photo of swatches. */
export const noPaper =
  'No bare paper was found in the photo. Leave two fingers of unpainted white paper round the patches, fill the frame with the sheet, and take it again in even light.';
export const tooDark =
  'The photo is too dark: even the paper is grey. Take it again in more light, in open shade or under an overcast sky, without flash.';
export const burntPaper =
  'The paper is burnt out to pure white, so colours beside it can not be trusted. Take the photo again a little darker.';
export const noPatches =
  'No patches were found on the paper. See that they do not touch each other or the edge of the photo, or put the frames on them yourself.';
export const onePatch =
  'One patch alone says too little about a paint. Measure at least two steps, better five, each twice as thin as the one before.';
export const alikeSteps =
  'All steps look the same, so nothing can be learned from them. Move each frame on its own patch, or paint the steps further apart: each twice as thin.';

/** Of a page of mixes. */
export const notOfTheBox =
  'A square names a paint that is not in the box. Choose its paints again.';
export const noneMeasured =
  'None of these paints was measured by you: measure one from its steps first.';
export const neverMixed = (paint: string): string =>
  `No mix on the page holds ${paint}. Mix it one to one with another paint, or leave it out.`;

/** Of a palette she wishes. */
export const noSuchPaint = (id: string): string =>
  `There is no paint called '${id}'. Choose from the paint box.`;
export const noSuchSize = `A palette has 1 to ${largestPalette} paints: ask for a number in between.`;
export const tooManyChosen = `A palette has at most ${largestPalette} paints: leave some out.`;
export const wantedAndLeftOut = (paint: string): string =>
  `${paint} is both wanted and left out: decide for one.`;
export const tooManyWanted = (wanted: number, size: number): string =>
  `${wanted} paints are wanted in a palette of ${size}: allow more or want fewer.`;
export const noPaintLeft = 'No paint is left to choose from: put more paints in the box.';
export const notInPalette = (id: string): string =>
  `There is no paint '${id}' in this palette. Plan again.`;

/** Of a change of the photo. */
export const unclearChange = 'A change of the picture is not clear. Take it back and draw it anew.';

/** Of what she wishes of a reading. */
export const unclearSubject = 'The subject is circled once, then corrected. Circle it anew.';
export const unclearWhites =
  'Your strokes over the whites can not be read. Take the last ones back.';
export const unclearColours = 'A change of the colours names no colour. Choose the colours anew.';
export const noSuchShape = (leastMm: number, mostMm: number): string =>
  `The smallest shape of a wash measures ${leastMm} to ${mostMm} mm. Set it anew.`;
export const noSuchValues = `A value study has ${fewestBands} to ${mostBands} values. Choose a number between them.`;
export const noSuchLimits = `Limits between values lie between black and white, ${spellCount(mostBands - 1)} at most.`;
export const noSuchFamilies = `A picture is read in 1 to ${mostFamilies} colour families. Choose a number between them.`;
export const noPixels = 'The picture has no pixels. Choose another photo.';
export const noSheet = 'The sheet has no size. Give its width and height in mm.';
