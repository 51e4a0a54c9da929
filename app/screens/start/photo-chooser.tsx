import { useRef } from 'preact/hooks';
import { Button } from '../common/button.tsx';

interface PhotoChooserProps {
  text: string;
  look?: 'plain' | 'quiet';
  /** Name of the file field itself. */
  field: string;
  multiple?: boolean;
  onFiles: (files: File[]) => void;
}

/** The photo library. No `capture` here: with it some phones open only the camera. */
export function PhotoChooser({ text, look, field, multiple = false, onFiles }: PhotoChooserProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <Button {...(look && { look })} large wide onClick={() => input.current?.click()}>
        {text}
      </Button>
      <input
        ref={input}
        class="spoken"
        type="file"
        accept="image/*"
        multiple={multiple}
        tabIndex={-1}
        aria-label={field}
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          event.currentTarget.value = ''; // the same photo can be chosen again
          if (files.length) onFiles(files);
        }}
      />
    </>
  );
}
