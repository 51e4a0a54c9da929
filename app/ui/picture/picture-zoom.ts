import type { Point } from '../../core/colour/lab.ts';

/** The frame a picture is shown in, px, and the picture's own width / height. */
export interface PictureFrame {
  readonly width: number;
  readonly height: number;
  readonly ratio: number;
}

/**
 * What of a picture is seen. `scale` 1 shows the whole of it as large as the frame allows; `centre` is
 * the place of the picture (0..1 of its sides) in the middle of the frame. Nothing in px, so that it
 * holds when the device is turned.
 */
export interface Zoom {
  readonly scale: number;
  readonly centre: Point;
}

export const wholePicture: Zoom = { scale: 1, centre: [0.5, 0.5] };

/** So near that the picture's own pixels begin to show (common practice, no source). */
export const nearest = 8;
const doubleTapScale = 2.5;

/** The whole picture's size in the frame, px. */
function fitPicture({ width, height, ratio }: PictureFrame): Point {
  const across = Math.max(1, Math.min(width, height * ratio));
  return [across, across / ratio];
}

/** Half of what the frame shows along one side, as a share of the picture, leaves so much room. */
function held(share: number, framePx: number, picturePx: number): number {
  const half = framePx / (2 * picturePx);
  return half >= 0.5 ? 0.5 : Math.min(1 - half, Math.max(half, share));
}

/** The nearest view that is allowed: never smaller than whole, never past the picture's edge. */
export function boundZoom(stage: PictureFrame, { scale, centre }: Zoom): Zoom {
  const near = Math.min(nearest, Math.max(1, Number.isFinite(scale) ? scale : 1));
  const [across, down] = fitPicture(stage);
  return {
    scale: near,
    centre: [
      held(centre[0], stage.width, across * near),
      held(centre[1], stage.height, down * near),
    ],
  };
}

/** The place of the picture, 0..1 of its sides and beyond, under a point of the frame, px. */
export function placeUnder(stage: PictureFrame, { scale, centre }: Zoom, [x, y]: Point): Point {
  const [across, down] = fitPicture(stage);
  return [
    centre[0] + (x - stage.width / 2) / (across * scale),
    centre[1] + (y - stage.height / 2) / (down * scale),
  ];
}

/** The view at `scale` in which `place` of the picture lies under the point `[x, y]` of the frame. */
function zoomWith(stage: PictureFrame, scale: number, place: Point, [x, y]: Point): Zoom {
  const near = Math.min(nearest, Math.max(1, scale));
  const [across, down] = fitPicture(stage);
  const centre: Point = [
    place[0] - (x - stage.width / 2) / (across * near),
    place[1] - (y - stage.height / 2) / (down * near),
  ];
  return boundZoom(stage, { scale: near, centre });
}

/** Nearer (`factor` over 1) or farther; what lies under the point stays there. */
export const zoomAbout = (stage: PictureFrame, zoom: Zoom, point: Point, factor: number): Zoom =>
  zoomWith(stage, zoom.scale * factor, placeUnder(stage, zoom, point), point);

/** The picture taken along by so many px. */
export function pan(stage: PictureFrame, zoom: Zoom, [right, down]: Point): Zoom {
  const from: Point = [stage.width / 2, stage.height / 2];
  const to: Point = [from[0] + right, from[1] + down];
  return zoomWith(stage, zoom.scale, placeUnder(stage, zoom, from), to);
}

const middleOf = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
const apart = (a: Point, b: Point): number => Math.max(1, Math.hypot(a[0] - b[0], a[1] - b[1]));

/** Two fingers, where they began and where they are: what lay between them stays between them. */
export function pinch(
  stage: PictureFrame,
  zoom: Zoom,
  [a, b]: readonly [Point, Point],
  [movedA, movedB]: readonly [Point, Point],
): Zoom {
  const place = placeUnder(stage, zoom, middleOf(a, b));
  const scale = (zoom.scale * apart(movedA, movedB)) / apart(a, b);
  return zoomWith(stage, scale, place, middleOf(movedA, movedB));
}

/** In at the place tapped, or back to the whole. */
export const zoomByDoubleTap = (stage: PictureFrame, zoom: Zoom, point: Point): Zoom =>
  zoom.scale > 1 ? wholePicture : zoomAbout(stage, zoom, point, doubleTapScale);
