import type { BrowserContext } from '@playwright/test';
import type { OwnBox } from '../../../app/model/own-box.ts';
import { MIGRATIONS } from '../../../app/storage/schema.ts';

const owned = [
  'py43-yellow-ochre',
  'py74-arylide-yellow',
  'pv19-quinacridone-red',
  'pr101-red-iron',
  'pb29-ultramarine-blue',
  'pb153-phthalocyanine-blue',
  'pg7-phthalocyanine-green',
  'pbr7-burnt-sienna',
];
const box: OwnBox = { schema: 1, owned, paints: [], gone: [] };

/**
 * Pages of this context find a box of eight paints ticked, as long as nothing is kept on the device yet: a palette
 * among them is found in a moment, among all paints only after seconds.
 */
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
