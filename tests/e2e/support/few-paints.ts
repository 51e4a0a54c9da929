import type { BrowserContext } from '@playwright/test';
import type { OwnBox } from '../../../app/core/paint/own-box.ts';
import { MIGRATIONS } from '../../../app/storage/schema.ts';
import { fewPaints } from '../../support/few-paints.ts';

const box: OwnBox = { schema: 1, owned: fewPaints, paints: [], gone: [] };

/** Pages of this context find a box of eight paints ticked, as long as nothing is kept on the device yet. */
export async function withFewPaints(context: BrowserContext): Promise<void> {
  await context.addInitScript(`try {
    const migrations = [${MIGRATIONS.map(String).join(',')}];
    const opening = indexedDB.open('firstwash', migrations.length);
    opening.onupgradeneeded = ({ oldVersion }) => {
      if (oldVersion > 0) return opening.transaction.abort();
      for (const climb of migrations) climb(opening.result, opening.transaction);
      const row = { id: 'paint box', value: ${JSON.stringify(box)} };
      opening.transaction.objectStore('settings').put(row);
    };
    opening.onsuccess = () => opening.result.close();
  } catch {
    // A blank page, or one where storage is shut off.
  }`);
}
