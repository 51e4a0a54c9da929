/** The build names itself once, in the head of its page. */
export const nameOfBuild = (document: Document): string =>
  document.querySelector<HTMLMetaElement>('meta[name=version]')?.content ?? 'unknown';
