interface DropAndPasteNeeds {
  readonly window: Window;
  /** False while a photo must not push away what she is doing. */
  readonly welcome: () => boolean;
  readonly onFile: (file: File) => void;
}

/** On a desktop a photo may also be dropped on the page or pasted. Text is left to the text fields. */
export function takeDropsAndPastes({ window, welcome, onFile }: DropAndPasteNeeds): void {
  const take = (event: Event, given: DataTransfer | null): void => {
    if (!given?.types.includes('Files')) return;
    event.preventDefault(); // else the browser opens a dropped file in place of the app
    const [file] = given.files;
    if (file && welcome()) onFile(file);
  };
  window.addEventListener('dragover', (event) => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    event.dataTransfer.dropEffect = welcome() ? 'copy' : 'none';
  });
  window.addEventListener('drop', (event) => take(event, event.dataTransfer));
  window.addEventListener('paste', (event) => take(event, event.clipboardData));
}
