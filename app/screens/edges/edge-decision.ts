import type { EdgeWish } from '../../model/edge-wishes.ts';
import type { Point } from '../../model/lab.ts';
import type { NewDecision, Painting } from '../../model/painting.ts';
import { placeOnEdge } from '../../model/place-on-edge.ts';
import type { Reading } from '../../model/reading.ts';
import { placeOnPhoto } from '../../model/stroke-on-photo.ts';

/** A decision about one edge of the reading, at a place of the photo where it is found again. */
export function edgeDecision(
  { reference }: Pick<Painting, 'reference'>,
  { edges = [], raster }: Pick<Reading, 'edges' | 'raster'>,
  index: number,
  wish: EdgeWish | null,
  touched?: Point,
): NewDecision | null {
  const place = placeOnEdge(edges, index, raster, touched);
  return place && { kind: 'edge', place: placeOnPhoto(reference, place), wish };
}
