/** How sure a measured paint is, 0..1, in two words. */
export function sureInWords(sure: number): string {
  if (sure >= 0.7) return 'Quite sure.';
  if (sure >= 0.45) return 'Fairly sure.';
  if (sure >= 0.25) return 'Not sure.';
  return 'Hardly sure at all.';
}
