import { type ReadonlySignal, signal } from '@preact/signals';
import type { Painting, Photo } from '../model/painting.ts';
import { photoHeader, uprightSize } from '../model/photo-header.ts';
import { photoProblem, undecodable } from '../model/photo-problem.ts';
import { centredCrop, type PixelSize } from '../model/reference.ts';
import { type Sheet, sheetOf, turned } from '../model/sheet.ts';
import type { Store } from '../storage/open-store.ts';
import { sentenceOf } from './sentence-of.ts';

/** The way in for a photo: kept on the device before anything is computed from it. */
export interface Intake {
  readonly busy: ReadonlySignal<boolean>;
  /** Why the last photo was not taken; null while all is well. */
  readonly problem: ReadonlySignal<string | null>;
  take(file: Blob & { readonly name?: string }): Promise<void>;
  /** Says why a photo already kept could not be used after all. */
  refuse(sentence: string): void;
  example(): Promise<void>;
  /** Address of the example's picture. */
  readonly examplePicture: string;
}

interface IntakeNeeds {
  readonly store: Store;
  /** The paper used last; null before the first painting. */
  readonly lastSheet: () => Sheet | null;
  readonly onPainting: (painting: Painting) => void;
}

const exampleTitle = 'Seed heads, last light';
const examplePicture = new URL('../demo/seed-heads.jpg', import.meta.url).href;

/** A file's name without its ending; a photo straight from a camera has none worth showing. */
function titleOf(name: string | undefined, at: Date): string {
  const stem = (name ?? '').replace(/\.[^.]*$/, '').trim();
  if (stem) return stem;
  return `Photo of ${at.toLocaleDateString(undefined, { day: 'numeric', month: 'long' })}`;
}

async function digest(bytes: ArrayBuffer): Promise<string> {
  const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...hash].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** The sheet lies as the photo does. */
const lyingAs = (photo: PixelSize, sheet: Sheet): Sheet =>
  turned(sheet, photo.width >= photo.height ? 'across' : 'upright');

export function createIntake({ store, lastSheet, onPainting }: IntakeNeeds): Intake {
  const busy = signal(false);
  const problem = signal<string | null>(null);
  let latest = 0;

  async function keep(file: Blob, name: string | undefined, title?: string): Promise<void> {
    const mine = ++latest;
    busy.value = true;
    problem.value = null;
    try {
      const bytes = await file.arrayBuffer();
      const seen = new Uint8Array(bytes);
      const refused = photoProblem(seen);
      const header = photoHeader(seen);
      if (refused || !header?.width || !header.height) {
        if (mine === latest) problem.value = refused ?? undecodable(header);
        return;
      }
      const photo: Photo = {
        id: crypto.randomUUID(),
        bytes,
        mime: `image/${header.kind}`,
        sha256: await digest(bytes),
        name: name ?? '',
      };
      const size = uprightSize(header);
      const sheet = lyingAs(size, lastSheet() ?? sheetOf('quarter', 'across'));
      const now = new Date();
      const painting: Painting = {
        schema: 1,
        id: crypto.randomUUID(),
        title: title ?? titleOf(name, now),
        createdAt: now.getTime(),
        updatedAt: now.getTime(),
        reference: { photoId: photo.id, crop: centredCrop(size, sheet), sheet },
        decisions: [],
        planIds: [],
        sessionIds: [],
      };
      if (mine !== latest) return; // another photo was chosen meanwhile
      await store.addPainting(painting, photo);
      if (mine === latest) onPainting(painting);
    } catch (fault) {
      if (mine === latest) problem.value = unreadable(fault) ?? sentenceOf(fault);
    } finally {
      if (mine === latest) busy.value = false;
    }
  }

  return {
    busy,
    problem,
    examplePicture,
    refuse(sentence) {
      problem.value = sentence;
    },
    take: (file) => keep(file, file.name),
    async example() {
      const response = await fetch(examplePicture);
      await keep(await response.blob(), undefined, exampleTitle);
    },
  };
}

/** A file that was moved or changed after it was chosen, or that a cloud drive did not hand over. */
function unreadable(fault: unknown): string | null {
  const gone = fault instanceof DOMException && /^Not(Readable|Found)Error$/.test(fault.name);
  return gone ? "The photo's file could not be read. Choose it again." : null;
}
