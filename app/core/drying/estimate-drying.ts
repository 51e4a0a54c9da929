import type { Range } from '../colour/lab.ts';
import { LastAnswers } from '../numeric/memo.ts';
import { clampConditions, type DryingConditions } from './conditions.ts';
import { evaporationOf } from './evaporation.ts';
import { applyPace, type Pace } from './learn-pace.ts';
import { coolTestWorks, type Weather } from './weather.ts';

/** Water one square metre takes up in a minute, g: soft-sized and hard-sized paper (ISO 535; guess). */
const cobb = { soft: 40, hard: 20 } as const;

/** A film this thin lies in the tooth of the paper and no longer shines, g/m2 (guess). */
const toothGrams = 10;

/**
 * Minutes until the shine has gone: what lies on the sheet sinks in with the square root of time
 * (ISO 535 gives the first minute, Lucas-Washburn the root) and evaporates at `gramsPerHour`.
 * Water in g/m2; 0 where there is no shine to begin with.
 */
function shineMinutes(waterGrams: number, cobb60: number, gramsPerHour: number): number {
  const film = waterGrams - toothGrams;
  if (film <= 0) return 0;
  // film = cobb sqrt(t) + rate t, a square in sqrt(t); written so that rate 0 does no harm.
  const rate = Math.max(0, gramsPerHour) / 60;
  const root = (2 * film) / (cobb60 + Math.sqrt(cobb60 * cobb60 + 4 * rate * film));
  return root * root;
}

// GAB sorption isotherm of paper: Vieira & Rocha, Braz. J. Chem. Eng. 25(2), 2008, find that it fits
// handmade paper; the three coefficients are fitted to moisture figures from memory.
const monolayer = 0.04;
const C = 15;
const K = 0.8;

/** Grams of water a gram of dry fibre holds in air of that water activity, 0..1 (0.5 = 50 % humidity). */
export function moistureOf(activity: number): number {
  const x = K * activity;
  return (monolayer * C * x) / ((1 - x) * (1 - x + C * x));
}

/** Fibre wetter than this dries like open water. */
const openWaterMoisture = moistureOf(1);

/** Water activity 0..1 over fibre with that much water, g per g: the inverse of `moistureOf`. */
export function activityOf(moisture: number): number {
  if (moisture >= openWaterMoisture) return 1;
  if (moisture <= 0) return 0;
  // X (1-x)(1-x+Cx) = Xm C x is a square in x: X(1-C) x^2 + (X(C-2) - Xm C) x + X = 0.
  const a = moisture * (1 - C);
  const b = moisture * (C - 2) - monolayer * C;
  const x = (-b - Math.sqrt(b * b - 4 * a * moisture)) / (2 * a);
  return Math.min(1, Math.max(0, x / K));
}

/** A sheet is sold by its weight in air of half humidity (ISO 536 weighs it so, from memory): water and all. */
const dryShare = 1 / (1 + moistureOf(0.5));
/** Water per fibre in the layer a wash wets at once, g per g (own). */
const topLayerMoisture = 0.5;
/** A few drops do not reach through a thick sheet: fibre they spread into at most, g per g (own). */
const farthestSpread = 30;
const slices = 60;
/** Bone dry to the hand: this share of the added water has gone (own). */
const gone = 0.95;

/**
 * Minutes until bone dry. `early`: the water stays in the top layer; `late`: it has spread through
 * the whole thickness, where thick paper holds on to it. Water and paper in g/m2.
 * Open water at first, then slower as the fibre holds on (GAB), until 95 % has gone.
 */
function boneDryMinutes(
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

export interface DryingMinutes {
  /** From the end of painting until the shine has gone: soft-sized to hard-sized paper. */
  readonly shineMinutes: Range;
  /** From the end of painting until bone dry: water on top to water all through. */
  readonly dryMinutes: Range;
}

/** A sheet that was soaked holds this much beside the wash, g/m2 (own estimate, as a pre-wetted sheet). */
const soakedGrams = 150;
/** And takes the wash up more slowly (guess). */
const soakedUptake = 0.5;

/** What the model alone says for exactly this much water. A hair dryer counts once the shine has gone. */
export function modelRange(conditions: DryingConditions): DryingMinutes {
  const { waterGramsPerSquareMetre: water, weather, paperGsm } = clampConditions(conditions);
  if (water <= 0) return { shineMinutes: [0, 0], dryMinutes: [0, 0] };
  const soaked = weather.backing === 'wet';
  const uptake = soaked ? soakedUptake : 1;
  const held = water + (soaked ? soakedGrams : 0);
  const rate = evaporationOf({ ...weather, hairDryer: false }).gramsPerSquareMetreHour;
  return {
    shineMinutes: [
      shineMinutes(water, cobb.soft * uptake, rate),
      shineMinutes(water, cobb.hard * uptake, rate),
    ],
    dryMinutes: [
      boneDryMinutes(held, paperGsm, weather, 'early'),
      boneDryMinutes(held, paperGsm, weather, 'late'),
    ],
  };
}

/** What the drying of a wash is worked out with: `modelRange`, or one that keeps its answers. */
export type DryingModel = (conditions: DryingConditions) => DryingMinutes;

/** Four for each kind of wash in one air: those of some five airs. */
const keptAnswers = 128;

/**
 * A drying model that keeps its last answers: a session is folded anew after every tap, and a plan asks
 * for the same few washes again and again, while each answer takes near half a millisecond on a desktop.
 * Answers are shared: they must not be changed.
 */
export function createDryingModel(): DryingModel {
  const answers = new LastAnswers<DryingMinutes>(keptAnswers);
  return (conditions) => {
    const { waterGramsPerSquareMetre, paperGsm, weather } = conditions;
    const { celsius, humidity, airSpeed, sunWatts, backing, hairDryer } = weather;
    const figures = [waterGramsPerSquareMetre, paperGsm, celsius, humidity, airSpeed, sunWatts];
    const key = [...figures, backing, hairDryer].join(' ');
    const answer = answers.get(key) ?? modelRange(conditions);
    answers.keep(key, answer);
    return answer;
  };
}

interface DryingEstimate extends DryingMinutes {
  /** False in humid or cold air: then the back of the hand tells nothing. */
  readonly coolTestWorks: boolean;
  /** Say 'hours' rather than minutes. */
  readonly inHours: boolean;
}

/**
 * Until she has taught the app her own pace, the water she really puts down is the unknown. Painters
 * report 20 to 60 minutes and more for an ordinary wash on 300 g/m2, with a shine of 0 to 5: that is
 * the model between half and about one and a half times the water (own, fitted to those reports).
 */
const reported = { thinnest: 0.5, wettestShine: 1.5, wettestDry: 1.25 } as const;

export interface DryingPaces {
  readonly shine: Pace;
  readonly dry: Pace;
}

/**
 * The two drying clocks in minutes, as honest ranges. The shine goes by soaking in (minutes, hardly
 * weather); bone dry comes by evaporation (tens of minutes, all weather). Without taps of her own the
 * ranges span what painters report; with them they draw in on her. Never throws: conditions outside
 * the model's reach are brought to its border.
 */
export function estimateDrying(
  conditions: DryingConditions,
  paces?: DryingPaces,
  dryingModel: DryingModel = modelRange,
): DryingEstimate {
  const fair = clampConditions(conditions);
  const wide = untaught(fair, dryingModel);
  const minutes = paces ? taught(wide, dryingModel(fair), paces) : wide;
  const cool = coolTestWorks(fair.weather);
  return { ...minutes, coolTestWorks: cool, inHours: !cool };
}

function taught(wide: DryingMinutes, model: DryingMinutes, paces: DryingPaces): DryingMinutes {
  return {
    shineMinutes: applyPace(wide.shineMinutes, model.shineMinutes, paces.shine),
    dryMinutes: applyPace(wide.dryMinutes, model.dryMinutes, paces.dry),
  };
}

function untaught(conditions: DryingConditions, dryingModel: DryingModel): DryingMinutes {
  const minutesFor = (share: number): DryingMinutes =>
    dryingModel({
      ...conditions,
      waterGramsPerSquareMetre: conditions.waterGramsPerSquareMetre * share,
    });
  const thin = minutesFor(reported.thinnest);
  return {
    shineMinutes: [thin.shineMinutes[0], minutesFor(reported.wettestShine).shineMinutes[1]],
    dryMinutes: [thin.dryMinutes[0], minutesFor(reported.wettestDry).dryMinutes[1]],
  };
}
