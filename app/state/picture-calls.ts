import type { AnalysisClient } from '../analysis/analysis-client.ts';

/** What a screen may ask about a picture that was read. Each rejects when its signal is aborted. */
export type PictureCalls = Pick<AnalysisClient, 'softBlend' | 'outline'>;
