import { useRef } from 'preact/hooks';
import { Button } from './button.tsx';

interface FileChooserProps {
  text: string;
  look?: 'main' | 'plain' | 'quiet';
  /** Name of the file field itself. */
  field: string;
  /** As in HTML: 'image/*' is the photo library. */
  accept: string;
  multiple?: boolean;
  onFiles: (files: File[]) => void;
}

/** A button for files. No `capture` here: with it some phones open only the camera. */
export function FileChooser(props: FileChooserProps) {
  const { text, look, field, accept, multiple = false, onFiles } = props;
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
        accept={accept}
        multiple={multiple}
        tabIndex={-1}
        aria-label={field}
        onChange={(event) => {
          const files = [...(event.currentTarget.files ?? [])];
          event.currentTarget.value = ''; // the same file can be chosen again
          if (files.length) onFiles(files);
        }}
      />
    </>
  );
}
