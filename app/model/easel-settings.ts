/** How the easel speaks to her and stands; kept on the device for all paintings. */
export interface EaselSettings {
  readonly sound: boolean;
  readonly voice: boolean;
  /** The hand she paints with. */
  readonly hand: 'left' | 'right';
  /** Letters and digits act; paging, arrows, Enter and space always do. */
  readonly letterKeys: boolean;
}

/** Silent until she asks for it. */
export const quietEasel: EaselSettings = {
  sound: false,
  voice: false,
  hand: 'right',
  letterKeys: true,
};

/** What was kept, as far as it can be understood. */
export function easelSettingsOf(kept: unknown): EaselSettings {
  if (typeof kept !== 'object' || kept === null) return quietEasel;
  return {
    sound: 'sound' in kept && kept.sound === true,
    voice: 'voice' in kept && kept.voice === true,
    hand: 'hand' in kept && kept.hand === 'left' ? 'left' : 'right',
    letterKeys: !('letterKeys' in kept && kept.letterKeys === false),
  };
}
