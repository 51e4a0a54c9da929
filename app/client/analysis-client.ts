import * as Comlink from 'comlink';
import type {
  AnalysisCalls,
  CallAnswer,
  CallArguments,
  CallName,
  JobCalls,
} from '../../workers/api.ts';
import { createCallDesk, type DeskOptions } from './call-desk.ts';

type SignalCall<Name extends CallName> = (
  signal: AbortSignal,
  ...given: CallArguments<Name>
) => Promise<CallAnswer<Name>>;

/** Mapped over the interface itself, so that its comments show here too. */
type SignalCalls = { [Name in keyof AnalysisCalls]: SignalCall<Name> };

/**
 * The only door to the analysis worker: every call of `AnalysisCalls`, with a signal first. An abort
 * frees the caller at once with the signal's reason. Rejections: `AbortError`; `PhotoError` (a
 * sentence about the photo); `WishError` (a sentence: wishes for the palette contradict each other);
 * `AnalysisError` (a sentence: the work stopped; the next call uses a fresh worker). Bitmaps handed
 * out are the caller's to close.
 */
export interface AnalysisClient extends SignalCalls {
  dispose(): void;
}

const defaults: DeskOptions = {
  createWorker: () =>
    new Worker(new URL('../../workers/analysis.worker.ts', import.meta.url), { type: 'module' }),
  cancelMs: 250,
  silenceMs: 60_000,
};

/** What comes for a caller who has gone: its bitmaps, which lie at the top of it, are given back. */
function closeBitmaps(late: unknown): void {
  if (late === null || typeof late !== 'object' || ArrayBuffer.isView(late)) return;
  for (const each of Object.values(late)) if (each instanceof ImageBitmap) each.close();
}

/** Functions among what is given cross as proxies, and are called no more once `isOpen` says no. */
function proxyFunctions<Given extends unknown[]>(given: Given, isOpen: () => boolean): Given {
  const crossing = given.map((each) => {
    if (typeof each !== 'function') return each;
    return Comlink.proxy((...told: unknown[]): void => {
      if (isOpen()) Reflect.apply(each, undefined, told);
      else told.forEach(closeBitmaps);
    });
  });
  return crossing as Given; // each in its place and of its own type
}

export function createAnalysisClient(options: Partial<DeskOptions> = {}): AnalysisClient {
  const desk = createCallDesk({ ...defaults, ...options });

  /** The one way in: every call of the client is this one under its name. */
  const ask =
    <Name extends CallName>(name: Name): SignalCall<Name> =>
    (signal, ...given) =>
      desk.call(
        signal,
        (api: JobCalls, job) => api[name](job, ...proxyFunctions(given, () => desk.isOpen(job))),
        closeBitmaps,
      );

  return {
    openPhoto: ask('openPhoto'),
    photoSize: ask('photoSize'),
    read: ask('read'),
    plan: ask('plan'),
    palettes: ask('palettes'),
    standIns: ask('standIns'),
    subjectLine: ask('subjectLine'),
    compare: ask('compare'),
    washShapes: ask('washShapes'),
    softBlend: ask('softBlend'),
    outline: ask('outline'),
    pictures: ask('pictures'),
    paintBox: ask('paintBox'),
    pigmentTable: ask('pigmentTable'),
    opticsLike: ask('opticsLike'),
    renewBox: ask('renewBox'),
    measurePatches: ask('measurePatches'),
    fitPaint: ask('fitPaint'),
    refinePaints: ask('refinePaints'),
    mixNeighbours: ask('mixNeighbours'),
    mixingChart: ask('mixingChart'),
    lookAtScrap: ask('lookAtScrap'),
    warmUp: ask('warmUp'),
    dispose: desk.dispose,
  };
}
