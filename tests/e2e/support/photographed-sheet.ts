import type { Page } from '@playwright/test';
import type { Step, WashPlan } from '../../../app/core/plan/plan.ts';
import type { Reading } from '../../../app/core/reading/reading.ts';
import type { Drawing } from '../../support/compare/drawn-sheet.ts';
import { drawSheet } from '../../support/compare/drawn-sheet.ts';
import { photographed } from '../../support/compare/photographed.ts';
import type { Scene } from '../../support/compare/scene.ts';

export interface KeptPlan {
  readonly reading: Reading;
  readonly slotMap: Uint8Array;
  readonly plan: WashPlan;
}

const asBytes = (_key: string, value: unknown): unknown => {
  if (typeof value !== 'object' || value === null || !('base64' in value)) return value;
  const bytes = Buffer.from(String(value.base64), 'base64');
  return 'clamped' in value && value.clamped ? new Uint8ClampedArray(bytes) : new Uint8Array(bytes);
};

/** The plan that is kept last on the device, with the reading it was made over. */
export async function keptPlan(page: Page): Promise<KeptPlan> {
  const text = await page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('firstwash');
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    interface Row {
      readonly id: string;
      readonly createdAt: number;
      readonly readingId: string;
      readonly plan: unknown;
      readonly reading: unknown;
      readonly slotMap: { readonly packing: string; readonly bytes: ArrayBuffer };
    }
    const all = (table: string) =>
      new Promise<Row[]>((resolve, reject) => {
        const asking = database.transaction(table).objectStore(table).getAll();
        asking.onsuccess = () => resolve(asking.result);
        asking.onerror = () => reject(asking.error);
      });
    const row = (await all('plans')).sort((a, b) => a.createdAt - b.createdAt).at(-1);
    const kept = (await all('readings')).find(({ id }) => id === row?.readingId);
    database.close();
    if (!row || !kept) throw new Error('no plan is kept yet');
    const { packing, bytes } = kept.slotMap;
    const unpacked =
      packing === 'plain'
        ? bytes
        : await new Response(
            new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate-raw')),
          ).arrayBuffer();
    const inText = (_key: string, value: unknown): unknown => {
      if (!ArrayBuffer.isView(value)) return value;
      let binary = '';
      for (const byte of new Uint8Array(value.buffer, value.byteOffset, value.byteLength))
        binary += String.fromCharCode(byte);
      return { base64: btoa(binary), clamped: value instanceof Uint8ClampedArray };
    };
    const found = { reading: kept.reading, plan: row.plan, slotMap: new Uint8Array(unpacked) };
    return JSON.stringify(found, inText);
  });
  return JSON.parse(text, asBytes);
}

/** A photo of the sheet after a step, as a file input takes it, drawn and photographed by the tests' own means. */
export async function sheetPhoto(
  { reading, slotMap, plan }: KeptPlan,
  step: Step,
  scene: Scene,
  drawing: Drawing = {},
) {
  const { jpeg } = await photographed(drawSheet(reading, slotMap, plan, step, drawing), scene);
  return { name: 'sheet.jpg', mimeType: 'image/jpeg', buffer: jpeg };
}
