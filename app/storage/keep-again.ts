import type { Painting } from '../core/decisions/painting.ts';
import type { SessionEvent } from '../core/session/session-event.ts';
import { putPainting } from './cards.ts';
import { type NewPlan, planRows } from './plans.ts';
import type { Transactions } from './transactions.ts';

/** What a window has open, whole but for the photo's bytes, which are not held in memory. */
export interface OpenWork {
  readonly painting: Painting;
  /** The plan last; the one a session is bound to before it. */
  readonly plans: readonly NewPlan[];
  readonly session: {
    readonly id: string;
    readonly planId: string;
    readonly log: readonly SessionEvent[];
  } | null;
}

export interface KeepAgain {
  /** After all was cleared: writes what is open once more, all or nothing. What is there by now stays. */
  keepAgain(work: OpenWork): Promise<void>;
}

export function createKeepAgain(transactions: Transactions, readTimeMs: () => number): KeepAgain {
  return {
    async keepAgain({ painting, plans, session }) {
      const { id } = painting;
      const rows = await Promise.all(plans.map((made) => planRows(id, made, readTimeMs())));
      await transactions.write(
        id,
        ['paintings', 'cards', 'plans', 'readings', 'sessions', 'events'],
        async (t) => {
          if (await t.get('paintings', id)) return; // another window was first
          await putPainting(t, {
            ...painting,
            planIds: plans.map(({ plan }) => plan.id),
            sessionIds: session ? [session.id] : [],
          });
          for (const { plan, reading } of rows) {
            await t.put('plans', plan);
            await t.put('readings', reading);
          }
          if (!session) return;
          await t.put('sessions', { id: session.id, paintingId: id, planId: session.planId });
          for (const line of session.log)
            if (!(await t.get('events', [line.sessionId, line.seq]))) await t.put('events', line);
        },
      );
    },
  };
}
