import { useEffect, useMemo } from 'preact/hooks';
import type { Easel } from '../../state/easel.ts';
import type { Keepsakes } from '../../state/keepsakes.ts';
import { createRecordPhotos } from '../../state/record-photos.ts';
import { PhotoInput } from '../camera/photo-input.tsx';
import { Fold } from './fold.tsx';

interface PhotoPanelProps {
  easel: Easel;
  keepsakes: Keepsakes;
  sessionId: string;
}

/** A photo of the sheet as it is now, kept as it comes from the camera. */
export function PhotoPanel({ easel, keepsakes, sessionId }: PhotoPanelProps) {
  const photos = useMemo(
    () => createRecordPhotos({ keepsakes, easel, sessionId }),
    [keepsakes, easel, sessionId],
  );
  useEffect(() => void photos.open(), [photos]);
  const { value: problem } = photos.problem;
  const take = (file: File): void => void photos.take(file);
  return (
    <Fold title="Photo for the record">
      <PhotoInput large ownCamera onFile={take}>
        Take a photo
      </PhotoInput>
      <PhotoInput large onFile={take}>
        Choose a photo
      </PhotoInput>
      {problem !== null && <p role="alert">{problem}</p>}
      <p role="status">
        {photos.keeping.value && 'The photo is being kept …'}
        {photos.stands.value && 'It stands in the record.'}
      </p>
    </Fold>
  );
}
