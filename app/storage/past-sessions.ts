import type { PastSession } from '../model/session/drying-history.ts';
import type { Keeper } from './keeper.ts';
import type { TableName } from './schema.ts';

export interface PastSessions {
  /** Every session of every painting on this device, in no order: what her drying pace is learned from. */
  pastSessions(): Promise<readonly PastSession[]>;
}

const tables: readonly TableName[] = ['sessions', 'plans', 'events'];

export function createPastSessions(keeper: Keeper): PastSessions {
  return {
    pastSessions: () =>
      keeper.read(tables, async (t) => {
        const found: PastSession[] = [];
        for (const { id, paintingId, planId } of await t.all('sessions')) {
          const row = await t.get('plans', planId);
          if (!row) continue;
          const events = await t.where('events', 'sessionId', id);
          found.push({ sessionId: id, paintingId, steps: row.plan.steps, events });
        }
        return found;
      }),
  };
}
