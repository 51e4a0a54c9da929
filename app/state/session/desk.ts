import type { AnalysisClient } from '../../client/analysis-client.ts';
import type { Painting } from '../../core/decisions/painting.ts';
import type { WashPlan } from '../../core/plan/plan.ts';
import type { Edge } from '../../core/reading/edges/edge.ts';
import type { PastSession } from '../../core/session/drying-history.ts';
import type { SessionEvent } from '../../core/session/session-event.ts';
import type { recordSession } from '../../core/session/session-record.ts';
import type { Store } from '../../storage/open-store.ts';
import type { OpenSession } from '../../storage/sessions.ts';
import type { OpenedReading } from '../painting/opened-reading.ts';
import type { LogKeeper } from './log-keeper.ts';

/** The plan a session is bound to, and its pictures. */
export interface Desk {
  readonly paintingId: string;
  /** What the painting is called; may be empty. */
  readonly title: string;
  readonly sessionId: string;
  readonly plan: WashPlan;
  readonly seen: OpenedReading;
  /** As she wants them on the sheet. */
  readonly edges: readonly Edge[];
}

/** All that is shown of a session when it is opened. */
export interface LaidDesk {
  readonly desk: Desk;
  readonly log: readonly SessionEvent[];
  /** All other sessions on this device. */
  readonly others: readonly PastSession[];
  /** What makes the record of it. */
  readonly recordSession: typeof recordSession;
}

interface DeskNeeds {
  readonly store: Store;
  readonly client: AnalysisClient;
  readonly keeper: Pick<LogKeeper, 'load'>;
}

/** Lays out a session of a painting. The pictures are the caller's to close with `clearDesk`. */
export async function layDesk(
  { store, client, keeper }: DeskNeeds,
  paintingId: string,
  { sessionId, plan, kept }: OpenSession,
): Promise<LaidDesk> {
  const past = await store.pastSessions().catch(() => []); // untaught rather than no session
  const log = await keeper.load(sessionId);
  const painting: Painting | null = await store.painting(paintingId);
  const { decisions, reference } = painting ?? { decisions: [], reference: null };
  // Not with the first screen: what was decided is laid over a reading, and recorded, only once one is opened.
  const [{ decidedEdges }, recorder] = await Promise.all([
    import('../../core/decisions/decided-reading.ts'),
    import('../../core/session/session-record.ts'),
  ]);
  const decided = reference ? decidedEdges(kept.reading, decisions, reference) : kept.reading;
  const pictures = await client.pictures(new AbortController().signal, kept.referenceJpeg);
  return {
    desk: {
      paintingId,
      title: painting?.title ?? '',
      sessionId,
      plan,
      seen: { ...kept, ...pictures },
      edges: decided.edges ?? [],
    },
    log,
    others: past.filter((each) => each.sessionId !== sessionId),
    recordSession: recorder.recordSession,
  };
}

export function clearDesk(desk: Desk | null): void {
  desk?.seen.reference.close();
  desk?.seen.grey.close();
}
