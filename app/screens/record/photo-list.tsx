import type { SessionRecord } from '../../model/session/record-of.ts';
import type { Keepsakes } from '../../state/keepsakes.ts';
import styles from './photo-list.module.css';
import { RecordPhoto } from './record-photo.tsx';
import page from './record-screen.module.css';

interface PhotoListProps {
  record: SessionRecord;
  keepsakes: Pick<Keepsakes, 'photo'>;
}

/** Her photos of the sheet, each with the time and the step it was taken at. */
export function PhotoList({ record, keepsakes }: PhotoListProps) {
  const { photos, steps } = record;
  if (photos.length === 0) return null;
  return (
    <section class={page.section}>
      <h2 class={page.heading}>Photos</h2>
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
    </section>
  );
}
