/** A name every file system takes: letters and digits of any script, the rest as single hyphens. */
export function fileName(title: string, ending: string): string {
  const safe = title
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${safe || 'painting'}-${ending}`;
}
