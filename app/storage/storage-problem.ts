const sentences = {
  'no-room':
    'Not saved: there is too little room left on this device. Delete paintings you no longer need here, or record photos (under About), or files elsewhere on the device, then try again. What was saved before is safe.',
  blocked:
    'This app is still open in another window, in an older version. Close the other window; this one goes on by itself.',
  outdated:
    'A newer version of this app was opened in another window, so nothing more is saved here. Close this window, or load it again to go on.',
  'newer-data':
    'Your paintings were saved by a newer version of this app than this one. Load the page again while you are online to get the newer version. Nothing is lost.',
  gone: 'The browser has cleared what was saved here. What you do from now on is saved again; earlier paintings have to be made anew.',
  'kept-again':
    'The browser has cleared what was saved here. The painting you have open is saved again, but not its photo; your other paintings are lost. Keep the photo safe elsewhere.',
  'photo-gone':
    'The photo of this painting is no longer on this device. Its plan and its record stay; to decide on values or colours anew, begin again from the photo.',
  'not-kept':
    'This window does not let the app save anything, so nothing will be kept when you close it. To keep your work, open the app in an ordinary window and allow it to store data.',
  'broken-figure':
    'Not saved: a figure in it could not be worked out, and a wrong one must not be kept. What was saved before is safe. Change the photo or a setting and try again.',
  taken:
    'This session is going on in another window as well. Go on there, or load this page again to take over what was done.',
  missing: 'This painting is no longer here. Go back to your paintings and choose another one.',
  damaged:
    'What is saved of this painting is damaged, so it can’t be opened. Your other paintings are safe. You can take it away on the first screen.',
  unreadable:
    'What is saved on this device could not be opened. Close all windows of this app and open it again; if that does not help, restart the device. Nothing was deleted.',
} as const;

type StorageProblemKind = keyof typeof sentences;

/** What went wrong with keeping, said to the painter: cause and what to do next. */
export class StorageProblem extends Error {
  override readonly name = 'StorageError';
  readonly kind: StorageProblemKind;

  constructor(kind: StorageProblemKind, cause?: unknown) {
    super(sentences[kind], { cause });
    this.kind = kind;
  }
}

const kindOfFault: Readonly<Record<string, StorageProblemKind>> = {
  QuotaExceededError: 'no-room',
  VersionError: 'newer-data',
  SecurityError: 'not-kept',
};

/** Any fault of the database as a problem with a sentence. */
export function storageProblem(fault: unknown): StorageProblem {
  if (fault instanceof StorageProblem) return fault;
  const name = fault instanceof Error ? fault.name : '';
  return new StorageProblem(kindOfFault[name] ?? 'unreadable', fault);
}
