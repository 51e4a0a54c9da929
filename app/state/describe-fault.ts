/** Faults that already come with a sentence for the painter. */
const spoken = new Set([
  'PhotoError',
  'CropError',
  'BrowserError',
  'AnalysisError',
  'StorageError',
  'BackupError',
  'WishError',
]);

/** A sentence for the painter, whatever went wrong: cause and what to do next, never a fault's name. */
export function describeFault(fault: unknown): string {
  if (fault instanceof Error && spoken.has(fault.name) && fault.message) return fault.message;
  console.info('A fault without a sentence of its own:', fault);
  return 'Something went wrong here. Nothing you kept is lost: try again, and if it happens once more, close and reopen the app.';
}
