import type { BrowserContext } from '@playwright/test';
import type { OwnBox } from '../../../app/core/paint/own-box.ts';
import { MIGRATIONS } from '../../../app/storage/schema.ts';
import { fewPaints } from '../../support/few-paints.ts';

/** What is ticked: eight paints; or four of which most ask for care. */
export const boxes = {
  few: fewPaints,
  careful: [
    'py35-cadmium-yellow',
    'pr108-cadmium-red',
    'pb28-cobalt-blue',
    'pb29-ultramarine-blue',
  ],
} as const;

/** Pages of this context find a box of these paints ticked, as long as nothing is kept on the device yet. */
export async function withBox(context: BrowserContext, owned: readonly string[]): Promise<void> {
  const box: OwnBox = { schema: 2, owned, paints: [], gone: [] };
  await context.addInitScript(`try {
    const makeTables = ${MIGRATIONS[0]};
    const opening = indexedDB.open('firstwash', 1); // the app climbs from there; a later one stays as it is
    opening.onerror = (event) => event.preventDefault();
    opening.onupgradeneeded = () => {
      makeTables(opening.result);
      const row = { id: 'paint box', value: ${JSON.stringify(box)} };
      opening.transaction.objectStore('settings').put(row);
    };
    opening.onsuccess = () => opening.result.close();
  } catch {
    // A blank page, or one where storage is shut off.
  }`);
}
