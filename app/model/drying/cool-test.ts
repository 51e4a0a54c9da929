import type { Weather } from './weather.ts';

/**
 * Whether the back of the hand can tell damp from dry: in humid or cold air a wet sheet is hardly
 * cooler than a dry one (own computation: 0.5 to 0.8 K). Time and colour have to tell instead.
 */
export function coolTestWorks(weather: Weather): boolean {
  return !(weather.humidity > 85 || weather.celsius < 8);
}
