import { useRef } from 'preact/hooks';
import { Button } from '../common/button.tsx';

/** The photo library. No `capture` here: with it some phones open only the camera. */
export function PhotoChooser({ onFile }: { onFile: (file: File) => void }) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button large wide onClick={() => input.current?.click()}>
        Choose a photo
      </Button>
      <input
        ref={input}
        class="spoken"
        type="file"
        accept="image/*"
        tabIndex={-1}
        aria-label="Reference photo"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = ''; // the same photo can be chosen again
          if (file) onFile(file);
        }}
      />
    </>
  );
}
