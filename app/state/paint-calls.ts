import type { AnalysisClient } from '../analysis/analysis-client.ts';

/** What a screen may ask about paints alone, without a picture. Each rejects when its signal is aborted. */
export type PaintCalls = Pick<AnalysisClient, 'mixNeighbours' | 'mixingChart'>;
