import type { Painting } from '../core/decisions/painting.ts';
import type { WashPlan } from '../core/plan/plan.ts';
import type { Reading } from '../core/reading/reading.ts';
import { changeKept } from './paintings.ts';
import {
  type PlanRow,
  packBytes,
  type ReadingRow,
  type Transaction,
  unpackBytes,
} from './schema.ts';
import { StorageProblem } from './storage-problem.ts';
import type { Transactions } from './transactions.ts';

/** A reading as it can be shown again without the photo. */
export interface KeptReading {
  readonly reading: Reading;
  /** Index into reading.slots for every pixel, row by row. */
  readonly slotMap: Uint8Array;
  /**
   * Simplified lightness of every pixel, round(L* x 2.55). Readings kept from before do not have it:
   * the limits between their values can't be followed live.
   */
  readonly lightnessMap?: Uint8Array;
  readonly referenceJpeg: ArrayBuffer;
}

/** A plan to keep, with the reading it was made over. The keys say what each was made from. */
export interface NewPlan {
  readonly plan: WashPlan;
  readonly key: string;
  readonly readingKey: string;
  readonly kept: KeptReading;
}

export interface Plans {
  /** Appends a revision; answers the painting as it is then. Keeping the same plan twice counts once. */
  keepPlan(paintingId: string, made: NewPlan): Promise<Painting>;
  /** The latest plan made from exactly that. */
  keptPlan(paintingId: string, key: string): Promise<WashPlan | null>;
  /** One by its id; null where it is not there, or damaged. */
  planById(id: string): Promise<WashPlan | null>;
  keptReading(paintingId: string, readingKey: string): Promise<KeptReading | null>;
}

/** So many readings stay besides those a session is bound to: they can be made again. */
const readingsKept = 4;

const readingIdOf = (paintingId: string, readingKey: string): string =>
  `${paintingId} ${readingKey}`;

export function createPlans(transactions: Transactions, readTimeMs: () => number): Plans {
  return {
    async keepPlan(paintingId, made) {
      const { plan } = made;
      const createdAt = readTimeMs();
      const rows = await planRows(paintingId, made, createdAt);
      return transactions.write(
        `plan of ${paintingId}`,
        ['paintings', 'cards', 'plans', 'readings', 'sessions'],
        async (t) => {
          const painting = await changeKept(t, paintingId, createdAt, (before) => ({
            ...before,
            planIds: [...before.planIds.filter((id) => id !== plan.id), plan.id],
          }));
          await t.put('plans', rows.plan);
          await t.put('readings', rows.reading);
          await dropOldReadings(t, paintingId);
          return painting;
        },
      );
    },
    keptPlan: (paintingId, key) =>
      transactions.read(['plans', 'readings'], async (t) => {
        const rows = await t.where('plans', 'paintingId', paintingId);
        const same = rows.filter((row) => row.key === key);
        const newest = same.sort((a, b) => b.createdAt - a.createdAt)[0];
        // One that is damaged, or has lost what it was made over, is made again.
        if (!isWholePlan(newest?.plan)) return null;
        return (await t.get('readings', newest.readingId)) ? newest.plan : null;
      }),
    planById: (id) =>
      transactions.read(['plans'], async (t) => {
        const plan = (await t.get('plans', id))?.plan;
        return isWholePlan(plan) ? plan : null;
      }),
    async keptReading(paintingId, readingKey) {
      const id = readingIdOf(paintingId, readingKey);
      const row = await transactions.read(['readings'], (t) => t.get('readings', id));
      if (!row) return null;
      try {
        return await unpackReading(row);
      } catch {
        // Damaged: it goes, and is made again from the photo.
        await transactions.write(`reading ${id}`, ['readings'], (t) => t.remove('readings', id));
        return null;
      }
    },
  };
}

/** The rows of a plan and of its reading. To be made before a transaction, which would not wait for the packing. */
export async function planRows(
  paintingId: string,
  { plan, key, readingKey, kept }: NewPlan,
  createdAt: number,
): Promise<{ plan: PlanRow; reading: ReadingRow }> {
  const readingId = readingIdOf(paintingId, readingKey);
  const { reading, referenceJpeg } = kept;
  const slotMap = await packBytes(kept.slotMap);
  const lightnessMap = kept.lightnessMap && (await packBytes(kept.lightnessMap));
  return {
    plan: { id: plan.id, paintingId, key, readingId, createdAt, plan },
    reading: {
      id: readingId,
      paintingId,
      createdAt,
      reading,
      slotMap,
      ...(lightnessMap && { lightnessMap }),
      referenceJpeg,
    },
  };
}

/** Whether a plan has what every screen takes for granted. */
export const isWholePlan = (plan: unknown): plan is WashPlan =>
  typeof plan === 'object' &&
  plan !== null &&
  ['steps', 'slots', 'mixes', 'palette'].every((part) =>
    Array.isArray((plan as Record<string, unknown>)[part]),
  );

/** Errors: 'damaged'. */
export async function unpackReading(row: ReadingRow): Promise<KeptReading> {
  try {
    const { reading, referenceJpeg } = row;
    const { width, height } = reading.raster;
    const lightnessMap = row.lightnessMap && (await unpackBytes(row.lightnessMap));
    const slotMap = await unpackBytes(row.slotMap);
    if (slotMap.length !== width * height) throw new RangeError('a map of another size');
    return { reading, referenceJpeg, slotMap, ...(lightnessMap && { lightnessMap }) };
  } catch (fault) {
    throw new StorageProblem('damaged', fault);
  }
}

async function dropOldReadings(t: Transaction, paintingId: string): Promise<void> {
  const readings = await t.where('readings', 'paintingId', paintingId);
  if (readings.length <= readingsKept) return;
  const sessions = await t.where('sessions', 'paintingId', paintingId);
  const bound = new Set(sessions.map(({ planId }) => planId));
  const plans = await t.where('plans', 'paintingId', paintingId);
  const needed = new Set(plans.filter(({ id }) => bound.has(id)).map((row) => row.readingId));
  const newestFirst = readings.sort((a, b) => b.createdAt - a.createdAt);
  for (const { id } of newestFirst.slice(readingsKept))
    if (!needed.has(id)) await t.remove('readings', id);
}
