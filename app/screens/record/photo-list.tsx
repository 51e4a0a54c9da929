import { useSignal } from '@preact/signals';
import { hideLocation } from '../../core/reference/hide-location.ts';
import type { PhotoNote, SessionRecord } from '../../core/session/session-record.ts';
import { timeInWords } from '../../core/words/dates.ts';
import { notOpened } from '../../core/words/notices.ts';
import type { Keepsakes } from '../../state/session/keepsakes.ts';
import { HandOutButtons } from '../../ui/controls/hand-out-buttons.tsx';
import styles from './photo-list.module.css';
import { usePhotoAddress } from './use-photo-address.ts';

interface PhotoListProps {
  record: SessionRecord;
  keepsakes: Pick<Keepsakes, 'photo'>;
}

/** Her photos of the sheet, each with the time and the step it was taken at. */
export function PhotoList({ record, keepsakes }: PhotoListProps) {
  const { photos, steps } = record;
  return (
    <>
      <ul class={styles.photos}>
        {photos.map((photo) => {
          const step = steps.find(({ key }) => key === photo.stepKey);
          return (
            <RecordPhoto
              key={photo.photoId}
              photo={photo}
              step={step ? `${step.n}. ${step.title}` : ''}
              keepsakes={keepsakes}
            />
          );
        })}
      </ul>
      <HandOutButtons what="the photos" make={() => photoFiles(record, keepsakes)} />
    </>
  );
}

/** The photos that are still kept, as they are but for where they were taken. */
async function photoFiles(
  { photos }: SessionRecord,
  keepsakes: PhotoListProps['keepsakes'],
): Promise<File[]> {
  const found = await Promise.all(photos.map(({ photoId }) => keepsakes.photo(photoId)));
  return found.flatMap((photo, i) => {
    if (!photo) return [];
    const bytes = hideLocation(new Uint8Array(photo.bytes)) as Uint8Array<ArrayBuffer>;
    const ending = photo.mime.replace(/^image\//, '').replace('jpeg', 'jpg');
    return [new File([bytes], `record ${i + 1}.${ending}`, { type: photo.mime })];
  });
}

interface RecordPhotoProps {
  photo: PhotoNote;
  /** The step it was taken at, in words. */
  step: string;
  keepsakes: Pick<Keepsakes, 'photo'>;
}

/** One photo, small; a tap shows it as wide as the page, another one small again. */
function RecordPhoto({ photo, step, keepsakes }: RecordPhotoProps) {
  const { photoId, at: takenAt } = photo;
  const { address, gone } = usePhotoAddress(keepsakes, photoId);
  const large = useSignal(false);
  const time = timeInWords(takenAt);
  return (
    <li class={styles.photo} data-large={large.value || undefined}>
      {address.value && (
        <button
          type="button"
          class={styles.picture}
          aria-pressed={large.value}
          aria-label={`Large: photo at ${time}, ${step}`}
          onClick={() => {
            large.value = !large.value;
          }}
        >
          <img src={address.value} alt="" loading="lazy" decoding="async" />
        </button>
      )}
      {gone.value && <p>{notOpened}</p>}
      <p class={styles.words}>
        {time}, {step}
      </p>
    </li>
  );
}
