/** The air she paints in and what lies under the sheet. */
export interface Weather {
  readonly celsius: number;
  /** Relative humidity, 0..100. */
  readonly humidity: number;
  /** Air speed over the sheet, m/s. */
  readonly airSpeed: number;
  /** Sunshine falling on the sheet, W/m2; none when left out. */
  readonly sunWatts?: number;
  /** What it lies on: a board open behind when left out. */
  readonly backing?: Backing;
  /** A hair dryer is swept over it once the shine has gone. */
  readonly hairDryer?: boolean;
}

/** block: a glued pad or foam behind the sheet. wet: the sheet was soaked and is wet underneath. */
export type Backing = 'board' | 'block' | 'wet';

export const roomWeather: Weather = { celsius: 20, humidity: 50, airSpeed: 0.15 };
