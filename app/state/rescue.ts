import type { OpenWork } from '../storage/keep-again.ts';
import type { Store } from '../storage/open-store.ts';
import type { NewPlan } from '../storage/plans.ts';
import { createRetry } from '../storage/retry-later.ts';
import type { OwnAirState } from './own-air.ts';
import { keptReadingOf } from './painting/opened-reading.ts';
import type { Studio } from './painting/studio.ts';
import type { OwnBoxState } from './paints/own-box.ts';
import type { Easel } from './session/easel.ts';

interface RescueNeeds {
  readonly store: Pick<Store, 'keepAgain' | 'sayKeptAgain'>;
  readonly studio: Pick<Studio, 'painting' | 'made'>;
  readonly easel: Pick<Easel, 'desk' | 'log'>;
  readonly ownBox: Pick<OwnBoxState, 'box' | 'change'>;
  readonly ownAir: Pick<OwnAirState, 'air' | 'isHers' | 'set'>;
}

/** The painting on the screen, and the session where it is the one at the easel; null where none is open. */
function openWork({ studio, easel }: Pick<RescueNeeds, 'studio' | 'easel'>): OpenWork | null {
  const painting = studio.painting.peek();
  if (!painting) return null;
  const made = studio.made();
  const desk = easel.desk.peek();
  if (desk?.paintingId !== painting.id)
    return { painting, plans: made ? [made] : [], session: null };
  const { sessionId, plan, seen } = desk;
  const bound: NewPlan = { plan, key: '', readingKey: sessionId, kept: keptReadingOf(seen) };
  return {
    painting,
    plans: made?.plan.id === plan.id ? [made] : [bound, ...(made ? [made] : [])],
    session: { id: sessionId, planId: plan.id, log: easel.log.peek() },
  };
}

/** The browser has cleared everything: what this window still holds is written again, and that is said. */
export async function rescue(needs: RescueNeeds): Promise<void> {
  const { store, ownBox, ownAir } = needs;
  try {
    const work = openWork(needs);
    if (work) await store.keepAgain(work);
    await ownBox.change((box) => box);
    if (ownAir.isHers.peek()) await ownAir.set(ownAir.air.peek());
    if (work) store.sayKeptAgain();
  } catch {
    createRetry(() => void rescue(needs))(); // 'gone' stands until then
  }
}
