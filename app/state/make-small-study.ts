import { darkPaint } from '../model/dark-paint.ts';
import type { Painting } from '../model/painting.ts';
import { photoHeader, uprightSize } from '../model/photo-header.ts';
import { smallStudy } from '../model/small-study.ts';
import type { Store } from '../storage/open-store.ts';
import { StorageProblem } from '../storage/storage-problem.ts';
import type { OwnBoxState } from './own-box.ts';

interface StudyNeeds {
  readonly store: Pick<Store, 'photo' | 'addPainting'>;
  readonly ownBox: Pick<OwnBoxState, 'box' | 'cards' | 'open'>;
}

/** Makes the small study of a painting and keeps it. Rejects with a sentence for her. */
export async function makeSmallStudy(
  { store, ownBox }: StudyNeeds,
  of: Painting,
): Promise<Painting> {
  const photo = await store.photo(of.reference.photoId);
  const header = photo && photoHeader(new Uint8Array(photo.bytes));
  if (!photo || !header) throw new StorageProblem('missing');
  await ownBox.open();
  const paint = darkPaint(ownBox.cards.value, ownBox.box.value);
  if (!paint)
    throw Object.assign(new Error('Your box has no paint to make a study with: put one in.'), {
      name: 'WishError',
    });
  const study = smallStudy({
    of,
    photo: uprightSize(header),
    paint: paint.id,
    at: Date.now(),
    newId: () => crypto.randomUUID(),
  });
  await store.addPainting(study, photo);
  return study;
}
