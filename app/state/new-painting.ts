import type { Painting, Photo, Purpose } from '../model/painting.ts';
import { uprightSize } from '../model/photo-header.ts';
import type { PixelSize } from '../model/pixel-size.ts';
import { centredCrop } from '../model/reference.ts';
import { type Sheet, sheetOf, turned } from '../model/sheet.ts';
import { type NamedBlob, photoOf } from './photo-of.ts';

export interface Naming {
  /** Instead of the file's name. */
  readonly title?: string;
  readonly purpose?: Purpose;
}

/** A file's name without its ending; a photo straight from a camera has none worth showing. */
function titleOf(name: string | undefined, at: Date): string {
  const stem = (name ?? '').replace(/\.[^.]*$/, '').trim();
  if (stem) return stem;
  return `Photo of ${at.toLocaleDateString(undefined, { day: 'numeric', month: 'long' })}`;
}

/** The sheet lies as the photo does. */
const lyingAs = (photo: PixelSize, sheet: Sheet): Sheet =>
  turned(sheet, photo.width >= photo.height ? 'across' : 'upright');

/**
 * A photo and its painting, ready to be kept: whole photo, the sheet used last. Rejects with a
 * PhotoError, whose message is for the painter, where the bytes already say it is no photo.
 */
export async function newPainting(
  file: NamedBlob,
  lastSheet: Sheet | null,
  { title, purpose }: Naming,
): Promise<{ painting: Painting; photo: Photo }> {
  const { photo, header } = await photoOf(file);
  const size = uprightSize(header);
  const sheet = lyingAs(size, lastSheet ?? sheetOf('quarter', 'across'));
  const now = new Date();
  const painting: Painting = {
    schema: 1,
    id: crypto.randomUUID(),
    title: title ?? titleOf(file.name, now),
    createdAt: now.getTime(),
    updatedAt: now.getTime(),
    reference: { photoId: photo.id, crop: centredCrop(size, sheet), sheet },
    decisions: [],
    planIds: [],
    sessionIds: [],
    ...(purpose && { purpose }),
  };
  return { painting, photo };
}
