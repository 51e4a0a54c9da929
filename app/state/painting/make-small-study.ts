import type { Painting } from '../../core/decisions/painting.ts';
import { darkPaint, smallStudy } from '../../core/decisions/small-study.ts';
import { studyTitle } from '../../core/words/painting-titles.ts';
import type { Store } from '../../storage/open-store.ts';
import type { OwnBoxState } from '../paints/own-box.ts';

interface StudyNeeds {
  readonly store: Pick<Store, 'photo' | 'addPainting'>;
  readonly ownBox: Pick<OwnBoxState, 'box' | 'cards' | 'open'>;
}

/** A fault with a sentence for her. */
const wrong = (sentence: string): Error =>
  Object.assign(new Error(sentence), { name: 'WishError' });

/** Makes the small study of a painting and keeps it. Rejects with a sentence for her. */
export async function makeSmallStudy(
  { store, ownBox }: StudyNeeds,
  painting: Painting,
): Promise<Painting> {
  const photo = await store.photo(painting.reference.photoId);
  if (!photo) throw wrong('The photo is not on this device any more. Go back to the paintings.');
  await ownBox.open();
  const paint = darkPaint(ownBox.cards.value, ownBox.box.value);
  if (!paint) throw wrong('Your box has no paint to make a study with: put one in.');
  const study = smallStudy({
    painting,
    title: studyTitle(painting.title),
    paint: paint.id,
    createdAt: Date.now(),
    newId: () => crypto.randomUUID(),
  });
  await store.addPainting(study, photo);
  return study;
}
