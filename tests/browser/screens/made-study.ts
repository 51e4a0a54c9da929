import { type Signal, signal } from '@preact/signals';
import { linearOfCode, makeGrey } from '../../../app/core/colour/srgb.ts';
import type { Decision, NewDecision, Painting } from '../../../app/core/decisions/painting.ts';
import { readingWishes } from '../../../app/core/decisions/wishes.ts';
import { readPicture } from '../../../app/core/reading/read-picture.ts';
import type { ReadingWishes } from '../../../app/core/reading/reading.ts';
import { washShapes } from '../../../app/core/reading/shapes/wash-masses.ts';
import { sheetOf } from '../../../app/core/reference/sheet.ts';
import {
  type OpenedReading,
  washShapesRequest,
} from '../../../app/state/painting/opened-reading.ts';
import type { Studio, Work } from '../../../app/state/painting/studio.ts';

/** Stripes of a fifth each, from left to right; their L* by culori 4.0.2 (lab65). */
export const stripes = [
  { code: [20, 20, 20], lightness: 6.32 },
  { code: [40, 60, 130], lightness: 27.56 },
  { code: [119, 119, 119], lightness: 50.03 },
  { code: [230, 150, 60], lightness: 68.73 },
  { code: [245, 245, 245], lightness: 96.54 },
] as const;

const size = { width: 400, height: 300 };
const sheet = sheetOf('quarter', 'across');

function pixels(): ImageData {
  const image = new ImageData(size.width, size.height);
  for (let p = 0; p < size.width * size.height; p++) {
    const stripe = stripes[Math.floor(((p % size.width) * 5) / size.width)];
    image.data.set([...(stripe?.code ?? [0, 0, 0]), 255], p * 4);
  }
  return image;
}

const image = pixels();
const plane = (channel: number): Float32Array =>
  Float32Array.from({ length: size.width * size.height }, (_, p) =>
    Number(linearOfCode[image.data[p * 4 + channel] ?? 0]),
  );
const raster = { ...size, red: plane(0), green: plane(1), blue: plane(2) };

type Read = ReturnType<typeof readPicture>;
const readings = new Map<string, Read>();

/** The stripes as read with these wishes; once for all screens, since it always comes out alike. */
function readStripes(wishes: ReadingWishes): Read {
  const name = JSON.stringify(wishes);
  const known = readings.get(name);
  if (known) return known;
  const clipped = { dark: 0, light: 0 };
  const read = readPicture(
    { raster, sheet, wishes, darkest: 12, paper: 95, clipped },
    async () => {},
  );
  readings.set(name, read);
  return read;
}

export interface MadeStudy {
  readonly studio: Studio;
  readonly seen: Signal<OpenedReading | null>;
  readonly work: Signal<Work | null>;
  readonly decided: readonly NewDecision[];
  /** Holds back the reading that follows a decision, until it is let go. */
  hold(): () => void;
}

/** A studio over five stripes: decisions are heeded by a real reading, nothing is kept. */
export async function madeStudy(): Promise<MadeStudy> {
  const reference = await createImageBitmap(image);
  const greyed = new ImageData(new Uint8ClampedArray(image.data), size.width, size.height);
  makeGrey(greyed.data);
  const grey = await createImageBitmap(greyed);

  const painting = signal<Painting | null>({
    schema: 1,
    id: 'made',
    title: 'Stripes',
    createdAt: 0,
    updatedAt: 0,
    reference: { photoId: 'p', crop: { centre: [0.5, 0.5], size: [1, 1], turn: 0 }, sheet },
    decisions: [],
    planIds: [],
    sessionIds: [],
  });
  const seen = signal<OpenedReading | null>(null);
  const work = signal<Work | null>(null);
  const decided: NewDecision[] = [];
  let held: Promise<void> = Promise.resolve();

  async function read(): Promise<void> {
    if (!painting.value) return;
    work.value = { stage: 'values', part: 0 };
    await held;
    const { decisions, reference: of } = painting.value;
    const { reading, slotMap, lightnessMap } = await readStripes(readingWishes(decisions, of));
    const referenceJpeg = new ArrayBuffer(0);
    seen.value = { reading, slotMap, lightnessMap, referenceJpeg, reference, grey };
    work.value = null;
  }
  await read();

  const nothing = async (): Promise<void> => {};
  const studio: Studio = {
    painting,
    pictures: signal({ reference, grey }),
    seen,
    plan: signal(null),
    work,
    problem: signal(null),
    waits: signal(false),
    open: nothing,
    leave: () => {},
    again: () => {},
    async decide(decision) {
      decided.push(decision);
      const made = { ...decision, id: String(decided.length), at: decided.length } as Decision;
      const before = painting.value;
      if (before) painting.value = { ...before, decisions: [...before.decisions, made] };
      await read();
    },
    note: nothing,
    subjectLine: async () => null,
    washShapes: async (_leaving, wash, sizes) =>
      seen.value && washShapes(washShapesRequest(seen.value, wash, sizes), nothing),
    setReference: nothing,
    paintIt: nothing,
    made: () => null,
    openPhoto: async () => null,
  };
  return {
    studio,
    seen,
    work,
    decided,
    hold() {
      let letGo = (): void => {};
      held = new Promise((resolve) => {
        letGo = resolve;
      });
      return letGo;
    },
  };
}
