import type { ComponentChildren } from 'preact';
import { PhotoInput } from '../../ui/controls/photo-input.tsx';
import styles from './measure-screen.module.css';

interface PhotoSectionProps {
  hasPhoto: boolean;
  /** What stands before the buttons, where there is something to say. */
  hint?: string | false;
  work: string | null;
  problem: string | null;
  onFile: (file: File) => void;
  children: ComponentChildren;
}

/** The photo that is measured from: taken or chosen, what is being done with it, what went wrong, and what follows. */
export function PhotoSection({
  hasPhoto,
  hint,
  work,
  problem,
  onFile,
  children,
}: PhotoSectionProps) {
  return (
    <section class={`${styles.section} ${styles.noPrint}`} aria-label="The photo">
      {hint && <p>{hint}</p>}
      <div class={styles.actions}>
        <PhotoInput ownCamera main={!hasPhoto} onFile={onFile}>
          Take a photo
        </PhotoInput>
        <PhotoInput onFile={onFile}>{hasPhoto ? 'Another photo' : 'Choose a photo'}</PhotoInput>
      </div>
      {work && <p role="status">{work}</p>}
      {problem && (
        <p class="problem" role="alert">
          {problem}
        </p>
      )}
      {children}
    </section>
  );
}
