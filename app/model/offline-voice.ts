/** What is asked of a voice; the browser's own voices fit. */
export interface Voice {
  readonly lang: string;
  readonly localService: boolean;
  readonly default: boolean;
}

/** A voice of this device that reads English, or null: one that needs a network is never taken. */
export function offlineVoice<V extends Voice>(voices: readonly V[]): V | null {
  const fit = voices.filter(({ lang, localService }) => localService && /^en(?![a-z])/i.test(lang));
  return fit.find((voice) => voice.default) ?? fit[0] ?? null;
}
