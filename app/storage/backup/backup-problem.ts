const sentences = {
  'not-a-copy':
    'This file is no copy made by Firstwash. Choose a file whose name begins with Firstwash and ends in .zip.',
  damaged:
    'This copy is damaged: it was cut short or changed on its way. Nothing here was changed. Fetch the file once more from where you keep it, or take an earlier copy.',
  newer:
    'This copy was made by a newer version of Firstwash than this one. Load this page again while you are online, then bring the copy back. Nothing here was changed.',
  remains:
    'This file holds what was left of a damaged painting: its photos, which open in any program, and its notes. It can’t be brought back as a painting; begin anew from its photo.',
  'nothing-left':
    'Nothing of this painting can be read any more, not even its photo. You can take it away on the first screen.',
  unread: 'The file could not be read. Choose it again.',
  painting:
    'A session is going on at the easel in another window. Finish there, or close that window; then bring the copy back. Nothing here was changed.',
  nothing: 'There is nothing to copy yet. Begin with a photo or the example.',
  unwritten:
    'The copy could not be written to that place: perhaps it is full or was taken away. Choose another place. What you have here is safe.',
} as const;

type BackupProblemKind = keyof typeof sentences;

/** What went wrong with a copy, said to the painter: cause and what to do next. */
export class BackupProblem extends Error {
  override readonly name = 'BackupError';
  readonly kind: BackupProblemKind;

  constructor(kind: BackupProblemKind, cause?: unknown) {
    super(sentences[kind], { cause });
    this.kind = kind;
  }
}

/** A copy that is not as it should be; `what` is for whoever looks for the cause. */
export const damagedBackup = (what: string): BackupProblem =>
  new BackupProblem('damaged', new RangeError(what));
