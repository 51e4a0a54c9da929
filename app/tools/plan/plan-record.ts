import { gunzipSync, gzipSync } from 'node:zlib';
import type { WashPlan } from '../../core/plan/plan.ts';
import { shrinkSlots } from '../../core/raster/paint-slots.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import type { Reading } from '../../core/reading/reading.ts';

/** All that a plan was made from and is drawn with: what comparing a sheet needs. */
export interface PlanRecord {
  readonly schema: 1;
  readonly reading: Reading;
  readonly plan: WashPlan;
  /** Slot of every pixel of the reading's raster. */
  readonly slotMap: Uint8Array;
  /** Simplified lightness, 255 is L* 100, of that size. */
  readonly grey: PixelSize & { readonly map: Uint8Array };
}

/** Enough for a grey that is squinted at, px. */
const greyPx = 200;

/** Arrays of bytes as text within JSON, by their kind. */
const asText = (_key: string, value: unknown): unknown => {
  if (value instanceof Uint8ClampedArray) return { clamped: Buffer.from(value).toString('base64') };
  if (value instanceof Uint8Array) return { bytes: Buffer.from(value).toString('base64') };
  return value;
};

const asBytes = (_key: string, value: unknown): unknown => {
  if (typeof value !== 'object' || value === null) return value;
  if ('clamped' in value && typeof value.clamped === 'string')
    return new Uint8ClampedArray(Buffer.from(value.clamped, 'base64'));
  if ('bytes' in value && typeof value.bytes === 'string')
    return new Uint8Array(Buffer.from(value.bytes, 'base64'));
  return value;
};

/** The record as one line of text: JSON, gzip, base64. */
export function recordAsText(
  reading: Reading,
  plan: WashPlan,
  slotMap: Uint8Array,
  lightnessMap: Uint8Array,
): string {
  const { width, height } = reading.raster;
  const { slotMap: map, ...size } = shrinkSlots(lightnessMap, width, height, greyPx);
  const record: PlanRecord = { schema: 1, reading, plan, slotMap, grey: { ...size, map } };
  return gzipSync(JSON.stringify(record, asText), { level: 9 }).toString('base64');
}

/** The record of such a text; null where it is none. */
export function recordFrom(text: string): PlanRecord | null {
  try {
    const record: unknown = JSON.parse(gunzipSync(Buffer.from(text, 'base64')).toString(), asBytes);
    const isRecord =
      typeof record === 'object' &&
      record !== null &&
      'slotMap' in record &&
      record.slotMap instanceof Uint8Array &&
      'plan' in record &&
      'reading' in record;
    return isRecord ? (record as PlanRecord) : null;
  } catch {
    return null;
  }
}
