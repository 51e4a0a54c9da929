import { buttonClass } from './button.tsx';
import styles from './photo-input.module.css';

interface PhotoInputProps {
  children: string;
  /** Straight to the phone's own camera app instead of its photos. */
  ownCamera?: boolean;
  /** As large as what is tapped at the easel. */
  large?: boolean;
  /** What comes next on this screen. */
  main?: boolean;
  onFile: (file: File) => void;
}

/** A button that opens the device's chooser. Emptied after every choice, so that the same photo can be chosen again. */
export function PhotoInput({
  children,
  ownCamera = false,
  large = false,
  main = false,
  onFile,
}: PhotoInputProps) {
  return (
    <label class={`${buttonClass(main ? 'main' : 'plain', large)} ${styles.choose}`}>
      {children}
      <input
        class="spoken"
        type="file"
        accept="image/*"
        capture={ownCamera ? 'environment' : undefined}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = '';
          if (file) onFile(file);
        }}
      />
    </label>
  );
}

/** From the camera or from her photos: two buttons, at the easel. */
export function TakeOrChoose({ onFile }: Pick<PhotoInputProps, 'onFile'>) {
  return (
    <>
      <PhotoInput large ownCamera onFile={onFile}>
        Take a photo
      </PhotoInput>
      <PhotoInput large onFile={onFile}>
        Choose a photo
      </PhotoInput>
    </>
  );
}
