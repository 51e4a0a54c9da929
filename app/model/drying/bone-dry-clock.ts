import { evaporationOf } from './evaporation.ts';
import { activityOf, moistureOf } from './paper-moisture.ts';
import type { Weather } from './weather.ts';

/** A sheet weighed in air carries about 6.5 % water at half humidity. */
const dryShare = 1 / 1.065;
/** Water per fibre in the layer a wash wets at once, g per g. */
const topLayerMoisture = 0.5;
/** A few drops do not reach through a thick sheet: fibre they spread into at most, g per g (own). */
const farthestSpread = 30;
const slices = 60;
/** Bone dry to the hand: this share of the added water has gone. */
const gone = 0.95;

/**
 * Minutes until bone dry. `early`: the water stays in the top layer; `late`: it has spread through
 * the whole thickness, where thick paper holds on to it. Water and paper in g/m2.
 * Open water at first, then slower as the fibre holds on (GAB), until 95 % has gone.
 */
export function boneDryMinutes(
  waterGrams: number,
  paperGsm: number,
  weather: Weather,
  bound: 'early' | 'late',
): number {
  if (waterGrams <= 0) return 0;
  const sheet = paperGsm * dryShare;
  const fibre =
    bound === 'early'
      ? Math.min(sheet, waterGrams / topLayerMoisture)
      : Math.min(sheet, waterGrams * farthestSpread);
  const resting = moistureOf(weather.humidity / 100);
  const open = evaporationOf(weather).gramsPerSquareMetreHour;
  const slice = (waterGrams * gone) / slices;
  let minutes = 0;
  for (let i = 0; i < slices; i++) {
    const left = waterGrams - (i + 0.5) * slice;
    const activity = activityOf(resting + left / fibre);
    const rate = activity < 1 ? evaporationOf(weather, activity).gramsPerSquareMetreHour : open;
    minutes += (slice / rate) * 60;
  }
  return minutes;
}
