import type { Painting, Photo } from '../../../app/core/decisions/painting.ts';
import type { Step, WashPlan } from '../../../app/core/plan/plan.ts';
import type { Reading } from '../../../app/core/reading/reading.ts';
import type { EventBody, SessionEvent } from '../../../app/core/session/session-event.ts';
import type { NewPlan } from '../../../app/storage/plans.ts';
import { plainStep } from '../session/plain-step.ts';

export const photoSample = (id: string, bytes = 1000): Photo => ({
  id,
  bytes: new Uint8Array(bytes).map((_, i) => i % 251).buffer,
  mime: 'image/jpeg',
  sha256: 'ab',
  name: 'seed heads.jpg',
});

export const paintingSample = (id: string, photoId: string, updatedAt = 1): Painting => ({
  schema: 1,
  id,
  title: id,
  createdAt: 1,
  updatedAt,
  reference: {
    photoId,
    crop: { centre: [0.5, 0.5], size: [1, 1], turn: 0 },
    sheet: { format: 'quarter', widthMm: 381, heightMm: 279 },
  },
  decisions: [],
  planIds: [],
  sessionIds: [],
});

const step = (key: string, n: number): Step => ({
  ...plainStep(n),
  key,
  title: key,
  technique: 'wet on dry',
  paintMinutes: [5, 10],
  shineMinutes: [1, 5],
  dryMinutes: [20, 60],
  after: [[80, 0, 0]],
});

export const planSample = (id: string): WashPlan => ({
  schema: 1,
  id,
  engine: 'test',
  paper: [95, 0, 2],
  range: { mode: 'photographed', lo: 10, hi: 95, dark: 20, paper: 95 },
  slots: [],
  palette: [],
  optics: [],
  mixes: [],
  steps: [step('wash 1', 1), step('wash 2', 2)],
  warnings: [],
});

const readingSample: Reading = {
  engine: 'test',
  raster: { width: 40, height: 30 },
  sheet: { widthMm: 381, heightMm: 279 },
  lightness: { histogram: [], p5: 5, p50: 50, p95: 95 },
  bands: [],
  proposedBands: 4,
  bandsWhy: '',
  families: [],
  slots: [],
  borders: [],
  reserves: { share: 0, count: 0, smallCount: 0 },
  range: { mode: 'photographed', lo: 10, hi: 95, dark: 20, paper: 95 },
  brokenShare: 0,
  warnings: [],
};

export const newPlanSample = (id: string, key = 'k', readingKey = 'r'): NewPlan => ({
  plan: planSample(id),
  key,
  readingKey,
  kept: {
    reading: readingSample,
    slotMap: new Uint8Array(1200).map((_, i) => (i / 100) | 0),
    lightnessMap: new Uint8Array(1200).map((_, i) => i % 251),
    referenceJpeg: new Uint8Array([0xff, 0xd8, 1, 2]).buffer,
  },
});

export const eventSample = (sessionId: string, seq: number, what: EventBody): SessionEvent => ({
  id: `${sessionId} ${seq}`,
  sessionId,
  seq,
  planId: 'plan',
  wallMs: 1000 * seq,
  monoMs: 1000 * seq,
  bootId: 'boot',
  what,
});
